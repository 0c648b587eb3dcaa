import { SENDER } from "./hpxml-ids.ts";
import type { XmlNode } from "./xml-node.ts";

const LONGEST = 64;

/** Our own id of a thing where the file carries one, else the id of the file in our alphabet. */
export function ownId(identifier: XmlNode | undefined, fallback: string): string {
  const isOurs = identifier?.text("SendingSystemIdentifierType") === SENDER;
  const value = isOurs ? identifier?.text("SendingSystemIdentifierValue") : identifier?.attribute("id");
  identifier?.pass();
  const plain = (value ?? "")
    .replaceAll(/[^A-Za-z0-9._-]/g, "-")
    .replace(/^[^A-Za-z0-9]+/, "")
    .slice(0, LONGEST);
  return plain === "" ? fallback : plain;
}
