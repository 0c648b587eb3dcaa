/** Stay in capitals: armed services, instruments, networks of sun measurement. */
const KEPT = new Set(
  "AAF AFB AF AMOS ANGB ARM ASOS AWOS DC FAA MCAS MCAF NAAS NAF NAS NASA NDB NREL NSA NWS SGP SURFRAD USAF UO UT ISIS WB WSFO WSO".split(
    " ",
  ),
);
const SPELLED_OUT = new Map([
  ["AP", "Airport"],
  ["ARP", "Airport"],
  ["ARPT", "Airport"],
  ["INTL", "International"],
  ["MUNI", "Municipal"],
  ["RGNL", "Regional"],
  ["RGN", "Regional"],
  ["REGL", "Regional"],
  ["FLD", "Field"],
  ["CNTY", "County"],
  ["OF", "of"],
]);

/** A station's name without capitals, short forms (“CHICAGO OHARE INTL AP”) and remarks on its instruments. */
export function stationTitle(name: string): string {
  return name
    .replaceAll("INT'L", "INTL")
    .replaceAll("INT'", "INTL")
    .replaceAll("`", "'")
    .replaceAll("\\", "/")
    .replace(/\[.*\]|\(A[MSW]OS\)/g, "")
    .replaceAll("(", " (")
    .replace(/\s+/g, " ")
    .trim()
    .replace(
      /[A-Z]+/g,
      (word) => SPELLED_OUT.get(word) ?? (KEPT.has(word) ? word : word[0] + word.slice(1).toLowerCase()),
    )
    .replace(/'S\b/g, "'s");
}
