import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { fontFolder } from "#lib/documents/font-folder.ts";
import { PAGE_FONTS, type PageFont } from "#lib/documents/html/page-styles.ts";

/** The letters of the homeowner's page, from this server and no other. */
export async function GET(_request: Request, { params }: { params: Promise<{ name: string }> }): Promise<Response> {
  const name = (await params).name.replace(/\.woff2$/, "");
  if (!Object.hasOwn(PAGE_FONTS, name)) return new Response("No such font.", { status: 404 });
  const bytes = await readFile(/* turbopackIgnore: true */ join(fontFolder(), PAGE_FONTS[name as PageFont]));
  return new Response(new Uint8Array(bytes), {
    headers: { "content-type": "font/woff2", "cache-control": "public, max-age=31536000, immutable" },
  });
}
