import type { FrameWords } from "./document-view.ts";
import type { Speaker } from "./speaker.ts";

/** What stands around every document: page numbers, contents, fingerprint. */
export function frameWords(speaker: Speaker): FrameWords {
  return {
    page: speaker.say("frame.page"),
    of: speaker.say("frame.of"),
    contents: speaker.say("frame.contents"),
    tableOf: speaker.say("frame.tableOf"),
    fingerprint: speaker.say("frame.fingerprint"),
    linkHint: speaker.say("frame.linkHint"),
  };
}
