import type { ApiOperation } from "./api-operation.ts";
import { estimateJob, listMethods, recomputePacket, runOneMethod } from "./operations/calculation.ts";
import {
  commentOnClaim,
  decideOnClaim,
  getClaim,
  getPacket,
  listClaims,
  listPrograms,
  receiveHouse,
  submitClaim,
} from "./operations/claims.ts";
import { createJob, getJob, listJobs, saveJob } from "./operations/jobs.ts";

/** Every operation of the programming interface, in the order of the docs. */
export const API_OPERATIONS: readonly ApiOperation[] = [
  listMethods,
  runOneMethod,
  estimateJob,
  recomputePacket,
  listJobs,
  createJob,
  getJob,
  saveJob,
  listPrograms,
  listClaims,
  submitClaim,
  receiveHouse,
  getClaim,
  getPacket,
  commentOnClaim,
  decideOnClaim,
];
