import { XMLParser, XMLValidator } from "fast-xml-parser";
import { InputProblem } from "#lib/errors/input-problem.ts";

type Raw = Record<string, unknown>;

/** One element on its way in. What was asked for counts as read; the rest can be listed at the end. */
export interface XmlNode {
  readonly path: string;
  child(name: string): XmlNode | undefined;
  children(name: string): XmlNode[];
  /** Follows names downward, the first of each. */
  at(...names: readonly string[]): XmlNode | undefined;
  text(name: string): string | undefined;
  /** The same without counting it as read. */
  peek(name: string): string | undefined;
  /** @throws InputProblem when the text is no number. */
  number(name: string): number | undefined;
  attribute(name: string): string | undefined;
  has(name: string): boolean;
  /** Counts all below as read. */
  pass(): void;
}

export interface XmlDocument {
  root: XmlNode;
  /** The topmost elements of which nothing was read, each with how many values it holds. */
  unread(): { path: string; values: number }[];
}

const ATTRIBUTE = "@";
const isRaw = (value: unknown): value is Raw => typeof value === "object" && value !== null && !Array.isArray(value);
const listOf = (value: unknown): unknown[] => (Array.isArray(value) ? value : value === undefined ? [] : [value]);

function notXml(detail: string): InputProblem {
  return new InputProblem("input-unusable", [
    { pointer: "#", detail, code: "xml", fix: "Send an XML file as its program wrote it." },
  ]);
}

/** @throws InputProblem when the text is no XML, or defines entities of its own (which could expand without end). */
export function parseXml(text: string, rootName: string): XmlDocument {
  if (/<!DOCTYPE/i.test(text)) throw notXml("The file has a document type definition, which is not read");
  const verdict = XMLValidator.validate(text);
  if (verdict !== true)
    throw notXml(`The file is not XML at line ${verdict.err.line}, column ${verdict.err.col}: ${verdict.err.msg}`);
  const parsed: Raw = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: ATTRIBUTE,
    removeNSPrefix: true,
    parseTagValue: false,
    parseAttributeValue: false,
    ignoreDeclaration: true,
  }).parse(text);
  const raw = parsed[rootName];
  if (!isRaw(raw)) throw notXml(`The outermost element is not ${rootName}`);
  const read = new Set<string>();
  return { root: nodeOf(raw, rootName, read), unread: () => findUnread(raw, rootName, read) };
}

function nodeOf(raw: Raw, path: string, read: Set<string>): XmlNode {
  const children = (name: string): XmlNode[] => {
    const list = listOf(raw[name]);
    return list.map((each, index) =>
      nodeOf(isRaw(each) ? each : { "#text": each }, childPath(path, name, list.length, index), read),
    );
  };
  const child = (name: string) => children(name)[0];
  const peek = (name: string): string | undefined => {
    const value = listOf(raw[name])[0];
    const content = String((isRaw(value) ? value["#text"] : value) ?? "").trim();
    return content === "" ? undefined : content;
  };
  const text = (name: string): string | undefined => {
    const found = child(name);
    if (found) read.add(found.path);
    return peek(name);
  };
  return {
    path,
    child,
    children,
    text,
    peek,
    at: (...names) => {
      const [first, ...rest] = names;
      return first === undefined ? nodeOf(raw, path, read) : child(first)?.at(...rest);
    },
    number: (name) => {
      const content = text(name);
      if (content === undefined) return undefined;
      const value = Number(content);
      if (!Number.isFinite(value)) throw notXml(`${path}/${name} is “${content}”, which is no number`);
      return value;
    },
    attribute: (name) => {
      const value = raw[`${ATTRIBUTE}${name}`];
      return value === undefined ? undefined : String(value);
    },
    has: (name) => {
      const found = child(name);
      if (found) read.add(found.path);
      return found !== undefined;
    },
    pass: () => {
      read.add(path);
    },
  };
}

function childPath(path: string, name: string, count: number, index: number): string {
  return `${path}/${name}${count > 1 ? `[${index + 1}]` : ""}`;
}

interface Found {
  values: number;
  wasRead: boolean;
  unread: { path: string; values: number }[];
}

function findUnread(raw: Raw, path: string, read: ReadonlySet<string>): Found["unread"] {
  const { values, wasRead, unread } = look(raw, path, read);
  return wasRead ? unread : [{ path, values }];
}

function look(value: unknown, path: string, read: ReadonlySet<string>): Found {
  if (read.has(path)) return { values: 0, wasRead: true, unread: [] };
  if (!isRaw(value)) return { values: 1, wasRead: false, unread: [] };
  const parts = Object.entries(value)
    .filter(([name]) => !name.startsWith(ATTRIBUTE))
    .flatMap(([name, each]) => {
      if (name === "#text") return [{ path, found: { values: 1, wasRead: false, unread: [] } as Found }];
      const list = listOf(each);
      return list.map((item, index) => {
        const below = childPath(path, name, list.length, index);
        return { path: below, found: look(item, below, read) };
      });
    });
  const wasRead = parts.some(({ found }) => found.wasRead);
  return {
    values: parts.reduce((sum, { found }) => sum + found.values, 0),
    wasRead,
    unread: parts.flatMap(({ path: below, found }) =>
      found.wasRead ? found.unread : found.values > 0 ? [{ path: below, values: found.values }] : [],
    ),
  };
}
