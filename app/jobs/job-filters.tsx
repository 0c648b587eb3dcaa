import Form from "next/form";
import { Button } from "#app/design/button.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { TextField } from "#app/design/text-field.tsx";
import type { JobState } from "#lib/store/repositories/jobs.ts";
import { JOB_STATE_WORDS, JOB_STATES } from "./job-states.ts";
import styles from "./jobs.module.css";

/** A search that is an address: it can be kept, shared and gone back to, and needs no script. */
export function JobFilters({ search, state }: { search: string; state?: JobState }) {
  return (
    <Form action="/jobs" className={styles.filters} role="search">
      <TextField label="Search" name="q" defaultValue={search} autoComplete="off" placeholder="Name, street or ZIP" />
      <PlainSelect
        label="State"
        name="state"
        defaultValue={state ?? ""}
        options={[
          { value: "", label: "All" },
          ...JOB_STATES.map((each) => ({ value: each, label: JOB_STATE_WORDS[each] })),
        ]}
      />
      <Button type="submit" variant="secondary">
        Find
      </Button>
    </Form>
  );
}
