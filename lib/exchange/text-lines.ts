/** One line of a text, counted from 1, without its end. */
export interface TextLine {
  number: number;
  text: string;
}

/** Text as it arrives: a whole string in a list, a file's stream, a response's stream. */
export type TextChunks = AsyncIterable<string> | Iterable<string>;

/** Longer than any line of the formats read here; a file without line ends must not fill the memory. */
const LONGEST_LINE = 100_000;

/**
 * The lines of a text that arrives in pieces, one at a time. Takes every usual line end and drops a byte order mark.
 * @throws Error from `tooLong` when a line does not end.
 */
export async function* textLines(chunks: TextChunks, tooLong: (line: TextLine) => Error): AsyncGenerator<TextLine> {
  let number = 0;
  let rest = "";
  const clean = (text: string) => (number === 1 ? text.replace(/^\uFEFF/, "") : text).replace(/\r$/, "");
  for await (const chunk of chunks) {
    const pieces = (rest + chunk).split("\n");
    rest = pieces.pop()!;
    for (const text of pieces) {
      number += 1;
      if (text.length > LONGEST_LINE) throw tooLong({ number, text });
      yield { number, text: clean(text) };
    }
    if (rest.length > LONGEST_LINE) throw tooLong({ number: number + 1, text: rest });
  }
  if (rest !== "") {
    number += 1;
    yield { number, text: clean(rest) };
  }
}
