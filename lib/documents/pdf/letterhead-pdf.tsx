import { Image, Text, View } from "@react-pdf/renderer";
import { PAPER_INKS } from "#lib/pictures/paper-inks.ts";
import type { Letterhead } from "../letterhead/letterhead.ts";
import { STYLES } from "./pdf-theme.ts";

const LOGO = { height: 42, width: 190, objectFit: "contain", objectPositionX: 0 } as const;

/** The firm's head on the first sheet: its logo or its name, and a rule in its color. */
export function LetterheadPdf({ letterhead }: { letterhead: Letterhead }) {
  const { name, detail, logoHref, accentColor } = letterhead;
  return (
    <View style={[STYLES.letterhead, { borderBottomColor: accentColor ?? PAPER_INKS.accent }]}>
      {logoHref ? <Image src={logoHref} style={LOGO} /> : <Text style={STYLES.firmName}>{name}</Text>}
      <View style={STYLES.firmDetail}>
        {logoHref ? <Text style={STYLES.small}>{name}</Text> : null}
        {detail ? <Text style={STYLES.small}>{detail}</Text> : null}
      </View>
    </View>
  );
}
