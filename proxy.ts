import { type NextRequest, NextResponse } from "next/server";
import { isLoopbackHost, isLoopbackOrigin } from "#lib/access/loopback-host.ts";
import { problem } from "#lib/errors/problem-details.ts";

const READING = new Set(["GET", "HEAD", "OPTIONS"]);

/**
 * There is no sign-in yet, so only this machine may ask. Listening on loopback keeps other machines out; this keeps
 * out web pages that point a name of theirs at 127.0.0.1, or send a form there from the visitor's own browser.
 */
export function proxy(request: NextRequest) {
  if (!isLoopbackHost(request.headers.get("host"))) {
    return refused("Ask for this page at 127.0.0.1 or localhost, on the machine where Ductmend runs.");
  }
  if (!READING.has(request.method) && !isLoopbackOrigin(request.headers.get("origin"))) {
    return refused("Only Ductmend's own pages may change something here.");
  }
  return NextResponse.next();
}

function refused(detail: string) {
  return NextResponse.json(problem("address-refused", detail), {
    status: 403,
    headers: { "content-type": "application/problem+json" },
  });
}
