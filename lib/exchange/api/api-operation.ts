import type { z } from "zod";
import type { ApiScope } from "./api-scope.ts";

/** What an operation is called with to show what it does. Names in braces stand for documents and for ids that only the caller knows. */
export interface ApiExample {
  path?: Readonly<Record<string, string>>;
  query?: Readonly<Record<string, string>>;
  body?: unknown;
}

/** One operation of the programming interface: everything that routing, checking, OpenAPI and the docs page need. */
export interface ApiOperation<
  Query extends z.ZodType = z.ZodType,
  Body extends z.ZodType = z.ZodType,
  Answer extends z.ZodType = z.ZodType,
> {
  operationId: string;
  method: "GET" | "POST" | "PUT";
  /** Below `/api/v1`, with `{name}` where the caller puts an id. */
  path: string;
  group: "Calculate" | "Jobs" | "Claims";
  title: string;
  description: string;
  scope: ApiScope;
  query?: Query;
  body?: Body;
  answer: Answer;
  /** Of success. */
  status: 200 | 201;
  example: ApiExample;
}

/** Keeps the schemas' types, so that whoever answers the operation gets them. */
export const operation = <Query extends z.ZodType, Body extends z.ZodType, Answer extends z.ZodType>(
  of: ApiOperation<Query, Body, Answer>,
): ApiOperation<Query, Body, Answer> => of;

export const API_BASE = "/api/v1";
