import { type Contractor, contractorSchema } from "#lib/documents/contractor.ts";
import type { OrganizationRecord } from "#lib/store/repositories/organizations.ts";

/** The firm as its papers show it; one that told nothing yet has its name alone. */
export function contractorOf({ branding, name }: Pick<OrganizationRecord, "branding" | "name">): Contractor {
  const kept = contractorSchema.safeParse(branding);
  return kept.success ? kept.data : { name };
}
