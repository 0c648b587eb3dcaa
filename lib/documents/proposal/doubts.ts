import { type Block, more, type Section } from "../document-view.ts";
import type { JobContext } from "./proposal-context.ts";
import { expectedSavings } from "./savings.ts";

const MOST_DRIVERS = 4;
/** Told at once; the others are folded. */
const OPEN_DRIVERS = 1;
/** A yearly saving whose drivers move it by less than this is not worth a tornado. */
const LEAST_SPREAD_USD = 10;

/** What is uncertain and why: what moves the saving most, and what the engine warns of. */
export function uncertainSection(context: JobContext): Section {
  const { speaker, result } = context;
  const drivers = result.drivers.filter(
    ({ lowUsdPerYear, highUsdPerYear }) => highUsdPerYear - lowUsdPerYear >= LEAST_SPREAD_USD,
  );
  const say = (driver: (typeof drivers)[number]) =>
    speaker.say("uncertain.driver", {
      what: speaker.sayIfKnown(`driver.${driver.id}`) ?? driver.title,
      low: speaker.usd(driver.lowUsdPerYear),
      high: speaker.usd(driver.highUsdPerYear),
      next: speaker.sayIfKnown(`next.${driver.id}`) ?? driver.nextMove,
    });
  const picture: Block = {
    kind: "picture",
    picture: {
      of: "savings-drivers",
      input: {
        savedUsdPerYear: Number(expectedSavings(context).costUsdPerYear.value),
        drivers: drivers.map(({ id, title, lowUsdPerYear, highUsdPerYear }) => ({
          id,
          label: speaker.sayIfKnown(`driver.${id}`) ?? title,
          lowUsdPerYear: Number(lowUsdPerYear),
          highUsdPerYear: Number(highUsdPerYear),
        })),
      },
    },
  };
  return {
    id: "uncertain",
    title: speaker.say("uncertain.title"),
    audience: "homeowner",
    blocks: [
      ...(drivers.length > 0
        ? ([
            {
              kind: "text",
              text: `${speaker.say("uncertain.lead")} ${drivers.slice(0, OPEN_DRIVERS).map(say).join(" ")}`,
            },
            ...more(speaker.say("more.uncertain"), [
              { kind: "list", items: drivers.slice(OPEN_DRIVERS, MOST_DRIVERS).map(say) },
              picture,
            ]),
          ] satisfies Block[])
        : [{ kind: "text" as const, text: speaker.say("uncertain.none") }]),
      ...warningBlocks(context),
    ],
  };
}

/** Doubts and problems in plain words; those without plain words yet stand with the technical notes. */
function warningBlocks({ speaker, result }: JobContext): Block[] {
  const serious = result.warnings.filter(({ severity }) => severity !== "note");
  const codes = [...new Set(serious.map(({ code }) => code))];
  return codes.flatMap((code): Block[] => {
    const words = speaker.sayIfKnown(`warning.${code}`);
    return words ? [{ kind: "text", text: words }] : [];
  });
}

/** What is checked so that the house stays well: named on the page, and folded. */
const OF_THE_HOUSE: readonly string[] = ["mold", "fresh-air", "static-pressure"];
/** Cautions about the crew's own safety: the same. All others, known or not, stand open. */
const OF_THE_CREW: readonly string[] = [
  "electricity",
  "attic-heat",
  "crawlspace",
  "manufactured-home-support",
  "ladders",
  "insulation",
];

/** The cautions of the result: none is left out, and one without plain words stands in the engine's own. */
export function safetySection({ speaker, result }: JobContext): Section {
  const notices = result.cautions.map(({ id, title, text }) => ({
    id,
    notice: {
      tone: "caution" as const,
      title: speaker.sayIfKnown(`caution.${id}.title`) ?? title,
      text: speaker.sayIfKnown(`caution.${id}.text`) ?? text,
    },
  }));
  const isOpen = ({ id }: { id: string }) => !OF_THE_CREW.includes(id) && !OF_THE_HOUSE.includes(id);
  const ofHouse = notices.filter(({ id }) => OF_THE_HOUSE.includes(id));
  const ofCrew = notices.filter(({ id }) => OF_THE_CREW.includes(id));
  const block = ({ notice }: (typeof notices)[number]): Block => ({ kind: "notice", notice });
  const names = (group: typeof notices) =>
    speaker.list(group.map(({ notice: { title } }) => title.toLocaleLowerCase(speaker.locale)));
  return {
    id: "safety",
    title: speaker.say("safety.title"),
    audience: "homeowner",
    blocks: [
      { kind: "text", text: speaker.say("safety.lead") },
      ...notices.filter(isOpen).map(block),
      ...more(
        speaker.say("more.safety", { names: names([...ofHouse, ...ofCrew]) }),
        [...ofHouse, ...ofCrew].map(block),
      ),
    ],
  };
}
