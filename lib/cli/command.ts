/** What a command gets: its words, and where to write. Everything it prints as data goes to `out`, all else to `say`. */
export interface CommandContext {
  args: readonly string[];
  /** Where the user stands; paths are relative to it. */
  workingFolder: string;
  readInput(): Promise<string>;
  out(text: string): void;
  say(text: string): void;
}

export interface Command {
  name: string;
  usage: string;
  summary: string;
  examples: readonly string[];
  run(context: CommandContext): Promise<number>;
}
