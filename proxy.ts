import { type NextRequest, NextResponse } from "next/server";
import { isLoopbackHost } from "#lib/access/loopback-host.ts";
import { problem } from "#lib/errors/problem-details.ts";

/**
 * There is no sign-in yet, so only this machine may ask. Listening on loopback keeps other machines out; this keeps
 * out web pages that point a name of theirs at 127.0.0.1 and let the visitor's browser ask for them.
 */
export function proxy(request: NextRequest) {
  if (isLoopbackHost(request.headers.get("host"))) return NextResponse.next();
  return NextResponse.json(
    problem("address-refused", "Ask for this page at 127.0.0.1 or localhost, on the machine where Ductmend runs."),
    { status: 403, headers: { "content-type": "application/problem+json" } },
  );
}
