/**
 * Every sentence that a piece of source can say: its string and template literals that begin like one and end with a
 * period. `${…}` becomes "7", or each of the texts it chooses from. The words of errors (`detail`, `fix`) are left out.
 */
export function sentencesOfSource(source: string): string[] {
  let at = 0;

  function readString(): string {
    let text = "";
    for (at += 1; source[at] !== '"'; at += 1) {
      if (source[at] === "\\") at += 1;
      text += source[at];
    }
    at += 1;
    return text;
  }

  /** The texts inside `${…}`, from behind its brace to behind the closing one. */
  function readHole(): string[] {
    const inner: string[] = [];
    for (let depth = 1; depth > 0; ) {
      const sign = source[at];
      if (sign === '"') inner.push(readString());
      else if (sign === "`") inner.push(...readTemplate());
      else {
        depth += sign === "{" ? 1 : sign === "}" ? -1 : 0;
        at += 1;
      }
    }
    // A text alone is compared with or handed on; of two or more one is chosen.
    return inner.length > 1 ? inner : ["7"];
  }

  function readTemplate(): string[] {
    let texts = [""];
    at += 1;
    while (source[at] !== "`") {
      const isHole = source.startsWith("${", at);
      if (isHole) at += 2;
      const next = isHole ? readHole() : [source[at]!];
      if (!isHole) at += 1;
      texts = texts.flatMap((text) => next.map((more) => text + more));
    }
    at += 1;
    return texts;
  }

  const found: string[] = [];
  while (at < source.length) {
    if (source.startsWith("//", at)) at = source.indexOf("\n", at);
    else if (source.startsWith("/*", at)) at = source.indexOf("*/", at) + 2;
    else if (source[at] === '"' || source[at] === "`") {
      const isOfError = /(detail|fix)\s*:\s*$/.test(source.slice(Math.max(0, at - 20), at));
      const texts = source[at] === '"' ? [readString()] : readTemplate();
      if (!isOfError) found.push(...texts);
    } else at += 1;
    if (at < 0) break;
  }
  return [...new Set(found)].filter((text) => /^[A-Z“0-9].*\s.*\.$/s.test(text));
}
