import { API_BASE, type ApiOperation } from "./api-operation.ts";
import { API_OPERATIONS } from "./operations.ts";

export interface MatchedOperation {
  operation: ApiOperation;
  path: Record<string, string>;
}

/** What an address means: an operation with its ids; else the methods that the address knows, none where it is unknown. */
export function matchOperation(method: string, pathname: string): MatchedOperation | { allowed: string[] } {
  const parts = pathname.replace(/\/$/, "").split("/");
  const fitting = API_OPERATIONS.flatMap((operation) => {
    const path = idsOf(`${API_BASE}${operation.path}`.split("/"), parts);
    return path ? [{ operation, path }] : [];
  });
  return (
    fitting.find(({ operation }) => operation.method === method) ?? {
      allowed: fitting.map(({ operation }) => operation.method),
    }
  );
}

function idsOf(pattern: readonly string[], parts: readonly string[]): Record<string, string> | null {
  if (pattern.length !== parts.length) return null;
  const ids: Record<string, string> = {};
  for (const [index, wanted] of pattern.entries()) {
    const part = parts[index]!;
    if (wanted.startsWith("{")) ids[wanted.slice(1, -1)] = decode(part);
    else if (wanted !== part) return null;
  }
  return ids;
}

/** A malformed escape is no id of anything; as it stands it is simply not found. */
function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
