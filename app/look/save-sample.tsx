"use client";

import { SaveForm } from "#app/design/save-form.tsx";
import { TextField } from "#app/design/text-field.tsx";

const nothing = () => undefined;

/** One form on its way to the server, and one that somebody else was quicker than. */
export function SaveSample() {
  return (
    <>
      <SaveForm problems={[]} refusal={undefined} isSaving saveLabel="Save" leaveTo="#states" onSave={nothing}>
        <TextField label="Name of the price list" defaultValue="Spring" />
      </SaveForm>
      <SaveForm
        problems={[]}
        refusal="Somebody else saved these prices meanwhile. Load them anew, then change them."
        isSaving={false}
        saveLabel="Save"
        leaveTo="#states"
        onSave={nothing}
      >
        <TextField label="Name of the price list" defaultValue="Autumn" />
      </SaveForm>
    </>
  );
}
