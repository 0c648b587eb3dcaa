/** The address of a sheet, for links from elsewhere. */
export function setupHref(fields: Readonly<Record<string, string | undefined>>): string {
  const given = Object.entries(fields).filter((each): each is [string, string] => each[1] !== undefined);
  return given.length === 0 ? "/setup" : `/setup?${new URLSearchParams(given)}`;
}
