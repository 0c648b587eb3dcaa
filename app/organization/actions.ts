"use server";

import { redirect } from "next/navigation";
import { actAs } from "#app/jobs/session.ts";
import type { Contractor } from "#lib/documents/contractor.ts";
import { readLogo } from "#lib/documents/letterhead/logo.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { contractorOf } from "./contractor-of.ts";
import { FIRM_FIELDS, type FirmDraft, type FirmProblem, readFirm } from "./firm-draft.ts";

export interface FirmReply {
  problems: readonly FirmProblem[];
  /** What was typed, so that nothing is typed twice. */
  typed?: FirmDraft;
}

/** Keeps the firm as its papers show it from now on; papers that are out stay as they were. */
export async function saveFirm(_before: FirmReply | null, form: FormData): Promise<FirmReply> {
  const typed = Object.fromEntries(FIRM_FIELDS.map((field) => [field, String(form.get(field) ?? "")])) as FirmDraft;
  const firm = readFirm(typed);
  if ("problems" in firm) return { problems: firm.problems, typed };
  await change(({ logo }) => ({ ...firm, ...(logo ? { logo } : {}) }));
  redirect("/organization?saved=firm");
}

/** Takes a logo in when its bytes are a picture that papers can show. */
export async function saveLogo(_before: FirmReply | null, form: FormData): Promise<FirmReply> {
  const file = form.get("logo");
  const wrong = (text: string): FirmReply => ({ problems: [{ fieldId: "logo", text }] });
  if (!(file instanceof File) || file.size === 0) return wrong("Choose a picture");
  try {
    const logo = readLogo(new Uint8Array(await file.arrayBuffer()));
    await change((firm) => ({ ...firm, logo }));
  } catch (thrown) {
    if (!(thrown instanceof InputProblem) || thrown.code === "not-allowed") throw thrown;
    return wrong(thrown.errors.map(({ detail, fix }) => `${detail}. ${fix}`).join(" "));
  }
  redirect("/organization?saved=logo");
}

export async function removeLogo(): Promise<void> {
  await change(({ logo: _logo, ...firm }) => firm);
  redirect("/organization?saved=no-logo");
}

async function change(next: (firm: Contractor) => Contractor): Promise<void> {
  await actAs("organization.edit", async ({ organizations, audit }, actor) => {
    const firm = next(contractorOf(await organizations.own()));
    await organizations.setBranding(firm);
    const { logo, ...rest } = firm;
    await audit.record({
      action: "organization.changed",
      subjectKind: "organization",
      subjectId: actor.organizationId,
      detail: { ...rest, hasLogo: logo !== undefined },
    });
  });
}
