"use server";

import { redirect } from "next/navigation";
import { whoActs } from "#app/jobs/session.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { drawInspections } from "#lib/work/claims/draw-inspections.ts";

const text = (form: FormData, name: string): string => String(form.get(name) ?? "").trim();

/** Draws a sample; the seed is kept with it, so that anyone can draw the same again. */
export async function draw(form: FormData): Promise<void> {
  const [store, actor] = [await sharedStore(), await whoActs()];
  let query = "";
  try {
    const seed = Number(text(form, "seed"));
    await drawInspections(store, actor, { programId: text(form, "programId"), seed, today: new Date() });
  } catch (thrown) {
    if (!(thrown instanceof InputProblem) || thrown.code === "not-allowed") throw thrown;
    query = "?problem=draw";
  }
  redirect(`/program/inspections${query}`);
}
