import { Image, Text, View } from "@react-pdf/renderer";
import type { DocumentPhoto } from "../document-view.ts";
import { STYLES } from "./pdf-theme.ts";

const PER_ROW = 3;
const GAP = 10;
const PICTURE = { width: "100%", objectFit: "contain", objectPositionX: 0 } as const;
const CAPTION_TOP = { marginTop: 3 };

/** Photos three in a row, each with what it shows; of one that is not on this server only the words. */
export function PhotosPdf({ photos, widthPoints }: { photos: readonly DocumentPhoto[]; widthPoints: number }) {
  const width = (widthPoints - (PER_ROW - 1) * GAP) / PER_ROW;
  const height = width * 0.75;
  const rows = Array.from({ length: Math.ceil(photos.length / PER_ROW) }, (_, row) =>
    photos.slice(row * PER_ROW, (row + 1) * PER_ROW),
  );
  return (
    <>
      {rows.map((row) => (
        <View
          key={row.map(({ sha256, caption }) => `${caption} ${sha256}`).join()}
          style={{ flexDirection: "row", gap: GAP, marginTop: 6 }}
          wrap={false}
        >
          {row.map(({ sha256, caption, href }) => (
            <View key={`${caption} ${sha256}`} style={{ width }}>
              {href ? <Image src={href} style={{ ...PICTURE, height }} /> : null}
              <Text style={[STYLES.small, CAPTION_TOP]}>{caption}</Text>
            </View>
          ))}
        </View>
      ))}
    </>
  );
}
