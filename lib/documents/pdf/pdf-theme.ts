import { StyleSheet } from "@react-pdf/renderer";
import { PAPER_INKS } from "#lib/pictures/paper-inks.ts";
import { DOCUMENT_FONTS } from "../document-fonts.ts";
import { PAPERS, type Paper } from "./paper.ts";

export const MARGIN_POINTS = 54;

/** The width that text and pictures have on a sheet. */
export const contentWidth = (paper: Paper): number => PAPERS[paper].widthPoints - 2 * MARGIN_POINTS;

const { ink, soft, hairline, accent } = PAPER_INKS;

/**
 * No line height on the page, the footer or a repeated head: the library multiplies it anew on each page for whatever
 * is fixed there. Body 11.5 points and left-aligned: a letter that a reader of 70 takes in without glasses at arm's length.
 */
export const STYLES = StyleSheet.create({
  page: {
    paddingTop: MARGIN_POINTS,
    paddingHorizontal: MARGIN_POINTS,
    paddingBottom: 64,
    fontFamily: DOCUMENT_FONTS.sans,
    fontSize: 11.5,
    color: ink,
  },
  letterhead: {
    flexDirection: "row",
    alignItems: "center",
    justifyContent: "space-between",
    borderBottomWidth: 2,
    paddingBottom: 7,
    marginBottom: 9,
  },
  firmName: { fontFamily: DOCUMENT_FONTS.serif, fontWeight: 600, fontSize: 15 },
  firmDetail: { maxWidth: 290, alignItems: "flex-end" },
  facts: { fontSize: 10, color: soft, marginBottom: 2, lineHeight: 1.35 },
  heading: { fontFamily: DOCUMENT_FONTS.serif, fontWeight: 600, fontSize: 27, lineHeight: 1.15, marginTop: 10 },
  lead: { fontFamily: DOCUMENT_FONTS.serif, fontSize: 14.5, lineHeight: 1.4, marginTop: 9 },
  sectionTitle: { fontFamily: DOCUMENT_FONTS.serif, fontWeight: 600, fontSize: 18, lineHeight: 1.2, marginBottom: 7 },
  section: { marginTop: 22 },
  subheading: { fontWeight: 600, fontSize: 12.5, marginTop: 10, marginBottom: 3 },
  text: { fontSize: 11.5, marginBottom: 6, lineHeight: 1.42 },
  plain: { fontSize: 11.5, lineHeight: 1.42 },
  noticeTitle: { fontSize: 11.5, fontWeight: 600, lineHeight: 1.42 },
  strong: { fontWeight: 600 },
  listRow: { flexDirection: "row", marginBottom: 4 },
  listMark: { width: 14, fontSize: 11.5, lineHeight: 1.42 },
  listText: { flex: 1, fontSize: 11.5, lineHeight: 1.42 },
  caption: { fontWeight: 600, fontSize: 11, marginBottom: 4 },
  table: { marginTop: 8, marginBottom: 10 },
  headRow: { flexDirection: "row", borderBottomWidth: 1.2, borderBottomColor: ink, paddingBottom: 3 },
  headCell: { fontSize: 9.5, fontWeight: 600, color: ink, paddingRight: 8 },
  row: { flexDirection: "row", borderBottomWidth: 0.6, borderBottomColor: hairline, paddingVertical: 3.5 },
  totalRow: { borderTopWidth: 1.2, borderTopColor: ink, borderBottomWidth: 0 },
  cell: { fontSize: 10.5, paddingRight: 8, lineHeight: 1.3 },
  numeric: { textAlign: "right" },
  figures: { marginTop: 4, marginBottom: 6 },
  figureRow: { flexDirection: "row" },
  figure: { width: "33.33%", paddingRight: 12, marginBottom: 10 },
  figureLabel: { fontSize: 10, color: soft, lineHeight: 1.25 },
  figureValue: { fontFamily: DOCUMENT_FONTS.mono, fontWeight: 600, fontSize: 15, lineHeight: 1.3 },
  figureDoubt: { fontSize: 9.5, color: soft, lineHeight: 1.25 },
  centered: { alignItems: "center" },
  picture: { marginTop: 8, marginBottom: 10 },
  pictureTitle: { fontWeight: 600, fontSize: 12.5, marginBottom: 2 },
  pictureNote: { fontSize: 9.5, color: soft, marginTop: 3, lineHeight: 1.3 },
  notice: { borderLeftWidth: 3, borderLeftColor: ink, paddingLeft: 9, paddingVertical: 1, marginBottom: 8 },
  noticeInvented: {
    borderWidth: 1.2,
    borderStyle: "dashed",
    borderColor: soft,
    padding: 8,
    marginTop: 10,
    marginBottom: 10,
  },
  noticeNote: { borderLeftWidth: 3, borderLeftColor: accent, paddingLeft: 9, marginTop: 10 },
  cards: { marginTop: 6 },
  cardRow: { flexDirection: "row", justifyContent: "space-between" },
  card: {
    width: "48.6%",
    borderWidth: 1,
    borderColor: soft,
    borderStyle: "solid",

    padding: 10,
    marginBottom: 10,
  },
  cardAdvised: { borderWidth: 2, borderColor: accent },
  cardTitle: { fontFamily: DOCUMENT_FONTS.serif, fontWeight: 600, fontSize: 13.5, lineHeight: 1.2 },
  cardMark: { fontSize: 9.5, fontWeight: 600, color: accent, marginBottom: 2 },
  cardPrice: { fontFamily: DOCUMENT_FONTS.mono, fontWeight: 600, fontSize: 17, marginVertical: 3 },
  cardSummary: { fontSize: 10, color: soft, lineHeight: 1.3, marginBottom: 4 },
  cardLine: { flexDirection: "row", justifyContent: "space-between", paddingVertical: 1.5 },
  cardLabel: { fontSize: 9.5, color: soft, width: "46%", lineHeight: 1.25 },
  cardValue: { fontSize: 10, width: "53%", textAlign: "right", lineHeight: 1.25 },
  footer: { position: "absolute", bottom: 30, fontSize: 8.5, color: soft },
  footerLeft: { left: MARGIN_POINTS, width: 400 },
  footerRight: { right: MARGIN_POINTS, width: 100, textAlign: "right" },
  small: { fontSize: 9, color: soft, lineHeight: 1.35 },
  digest: { fontFamily: DOCUMENT_FONTS.mono, fontSize: 8.5 },
  link: { flexDirection: "row", marginTop: 12, alignItems: "center" },
});
