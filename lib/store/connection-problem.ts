import { InputProblem } from "#lib/errors/input-problem.ts";

/** PostgreSQL's and Node's codes of a server that is away, going away or coming up. */
const AWAY = new Set([
  "ECONNREFUSED",
  "ECONNRESET",
  "ENOENT",
  "EPIPE",
  "ETIMEDOUT",
  "ENOTFOUND",
  "EAI_AGAIN",
  "EHOSTUNREACH",
  "57P01",
  "57P02",
  "57P03",
  "P1001",
  "P1017",
]);

/** Drivers also report a lost connection without any code. */
const WORDS_OF_A_LOST_CONNECTION =
  /connection terminated|is not queryable|closed the connection|unexpected postmaster exit|administrator command|can't reach database server/i;

/** Whether this error says that the server does not answer, rather than that it refused what was asked. */
export function isServerAway(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  if ("code" in error && AWAY.has(String(error.code))) return true;
  if (WORDS_OF_A_LOST_CONNECTION.test(error.message)) return true;
  // A name with several addresses: one error for all, with theirs inside.
  if (error instanceof AggregateError) return error.errors.some(isServerAway);
  return error.cause !== undefined && isServerAway(error.cause);
}

/** A failed connection in words for people, without the connection string. */
export function connectionProblem(error: unknown, where: string): InputProblem {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  const reason = REASONS[code] ?? (error instanceof Error && error.message ? error.message : "it does not answer");
  return new InputProblem("database-unreachable", [], `The database of ${where} cannot be used: ${reason}.`);
}

const REASONS: Record<string, string> = {
  ECONNREFUSED: "nothing listens at that address",
  ENOTFOUND: "no machine has that name",
  EAI_AGAIN: "the name of the machine could not be looked up",
  ENOENT: "its socket is not there",
  ETIMEDOUT: "it did not answer in time",
  "28P01": "the user name or the password is wrong",
  "28000": "this user may not connect",
  "3D000": "there is no database of that name",
  "53300": "it has no connection left",
  "57P03": "it is starting up or shutting down",
};
