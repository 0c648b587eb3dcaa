import { DataTable } from "#app/design/data-table.tsx";
import type { AuditRecord } from "#lib/store/repositories/audit.ts";
import type { ProgramRuleRecord } from "#lib/store/repositories/programs.ts";
import { day } from "../claim-words.ts";

/** The editions of a rule, the newest first, with the reason that came with each. */
export function Editions({
  rules,
  log,
  names,
}: {
  rules: readonly ProgramRuleRecord[];
  log: readonly AuditRecord[];
  names: ReadonlyMap<string, string>;
}) {
  return (
    <DataTable
      caption="Editions, the newest first"
      isCardsWhenNarrow
      columns={[
        { label: "Title" },
        { label: "In force from" },
        { label: "Reason" },
        { label: "By" },
        { label: "Fingerprint" },
      ]}
      rows={rules.map(({ id, document, effectiveOn, contentHash }) => {
        const put = log.find(({ detail }) => (detail as { ruleId?: string }).ruleId === id);
        return {
          id,
          cells: [
            String((document as { title?: string }).title ?? "without a title"),
            day(effectiveOn),
            String((put?.detail as { reason?: string } | undefined)?.reason ?? "–"),
            put ? (names.get(put.actorId ?? "") ?? "a colleague") : "–",
            contentHash.slice(0, 12),
          ],
        };
      })}
    />
  );
}
