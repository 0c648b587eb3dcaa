import type { JobContext } from "../proposal/proposal-context.ts";

/** A caution as the crew reads it. */
export function cautionWords(
  { speaker, language }: Pick<JobContext, "speaker" | "language">,
  { id, title, text }: { id: string; title: string; text: string },
): { title: string; text: string } {
  if (language === "en") return { title, text };
  return {
    title: speaker.sayIfKnown(`caution.${id}.title`) ?? title,
    text: speaker.sayIfKnown(`caution.${id}.text`) ?? text,
  };
}
