import { stepOfPath } from "./missing.ts";

/** Where the form asks for what an assumption stands in for: the step, and the field on it. */
export function fieldHref(jobId: string, pointer: string): string {
  const path = pointer.replace(/^#\//, "");
  // The size of a leak is several fields; the first one says how it is known.
  const fieldId = path.endsWith("/size") ? `${path}/from` : path;
  return `/jobs/${jobId}/${stepOfPath(path)}#${fieldId}`;
}
