/** The one table of what can go wrong: code → HTTP status, exit code, title, what a person can do. */
export const ERROR_TABLE = {
  "input-unusable": {
    status: 422,
    exitCode: 2,
    title: "Some values cannot be used",
    help: "Correct the values listed and send it again.",
  },
  "input-not-json": {
    status: 400,
    exitCode: 2,
    title: "The text is not JSON",
    help: "Check the file for a missing comma, bracket or quote.",
  },
  "schema-version-unknown": {
    status: 422,
    exitCode: 2,
    title: "This version of the document is not known",
    help: "Update Ductmend, or export the document again.",
  },
  "method-unknown": {
    status: 404,
    exitCode: 2,
    title: "No method has this name",
    help: "List the methods with `calc --list`.",
  },
  "command-unknown": { status: 400, exitCode: 2, title: "The command is not known", help: "Run `ductmend --help`." },
  "file-unreadable": {
    status: 400,
    exitCode: 2,
    title: "The file cannot be read",
    help: "Check the path and the permissions.",
  },
  "file-unwritable": {
    status: 500,
    exitCode: 3,
    title: "The file or folder cannot be written",
    help: "Check that the folder exists and that you may write there.",
  },
  "outside-range": {
    status: 422,
    exitCode: 2,
    title: "A value is outside what the method can answer",
    help: "Correct the value, or use a method made for it.",
  },
  "reference-missing": {
    status: 422,
    exitCode: 2,
    title: "No reference data for this place",
    help: "Check the ZIP code, or name a weather station.",
  },
  "key-unknown": {
    status: 401,
    exitCode: 3,
    title: "The API key is missing or not known",
    help: "Send the header `Authorization: Bearer KEY` with a key that was not revoked.",
  },
  "scope-missing": {
    status: 403,
    exitCode: 3,
    title: "The API key is not meant for this",
    help: "Make a key that has the scope named in the detail.",
  },
  "method-not-allowed": {
    status: 405,
    exitCode: 2,
    title: "This address does not know that method",
    help: "Use a method that the header `Allow` lists.",
  },
  "body-too-large": {
    status: 413,
    exitCode: 2,
    title: "The request is too large",
    help: "Send it in parts of at most 2 MB.",
  },
  "repeat-differs": {
    status: 422,
    exitCode: 2,
    title: "This idempotency key was used for another request",
    help: "Make a new key for each new request; repeat a key only with the same request.",
  },
  "not-found": { status: 404, exitCode: 2, title: "Not found", help: "Check the address." },
  "not-allowed": { status: 403, exitCode: 3, title: "This is not yours to do", help: "Ask the owner of the job." },
  conflict: {
    status: 409,
    exitCode: 3,
    title: "Somebody else changed this first",
    help: "Load it again, then repeat your change.",
  },
  "claim-differs": {
    status: 200,
    exitCode: 1,
    title: "The claim does not recompute to the same numbers",
    help: "See which number differs.",
  },
  "claim-invalid": { status: 422, exitCode: 1, title: "The claim is not valid", help: "See where it fails." },
  "database-unreachable": {
    status: 503,
    exitCode: 3,
    title: "The database does not answer",
    help: "Check DATABASE_URL, or unset it to use the embedded database.",
  },
  "database-unusable": {
    status: 503,
    exitCode: 3,
    title: "The database cannot be used as it is",
    help: "Follow the message, then start again.",
  },
  "address-refused": {
    status: 403,
    exitCode: 3,
    title: "The server listens on this machine only",
    help: "Open it at http://127.0.0.1.",
  },
  "solver-failed": {
    status: 500,
    exitCode: 3,
    title: "The plan could not be optimized",
    help: "Lower the number of leaks or raise the node limit.",
  },
  unexpected: {
    status: 500,
    exitCode: 3,
    title: "Something went wrong on our side",
    help: "Nothing was changed. Try again; if it stays, report it.",
  },
} as const satisfies Record<string, { status: number; exitCode: number; title: string; help: string }>;

export type ErrorCode = keyof typeof ERROR_TABLE;
