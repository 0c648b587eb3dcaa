"use client";

import { useState } from "react";
import { Button } from "#app/design/button.tsx";
import { FileField } from "#app/design/file-field.tsx";
import { Notice } from "#app/design/notice.tsx";
import { type Draft, listAt } from "../draft.ts";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";
import { PhotoList } from "./photo-list.tsx";
import { smallJpeg } from "./small-jpeg.ts";

const MOST_PHOTOS = 12;

/** Photos of one leak: made small on this device, kept with the job at once, named in it by their hash. */
export function LeakPhotos({ path, site, number }: { path: string; site: Draft; number: number }) {
  const { jobId, set } = useTrip();
  const [failed, setFailed] = useState<{ files: readonly File[]; why: string }>();
  const [isKeeping, setIsKeeping] = useState(false);
  const photos = listAt(site, "photos");
  const keep = async (files: readonly File[]) => {
    setIsKeeping(true);
    setFailed(undefined);
    const kept: Draft[] = [];
    try {
      for (const file of files.slice(0, MOST_PHOTOS - photos.length)) {
        const sha256 = await sendPhoto(jobId, await smallJpeg(file));
        if (![...photos, ...kept].some((photo) => photo.sha256 === sha256)) kept.push({ sha256, takenOn: today() });
      }
    } catch (thrown) {
      setFailed({ files: files.slice(kept.length), why: thrown instanceof Error ? thrown.message : String(thrown) });
    }
    if (kept.length > 0) set(`${path}/photos`, [...photos, ...kept]);
    setIsKeeping(false);
  };
  return (
    <div className={styles.photos}>
      {photos.length < MOST_PHOTOS ? (
        <FileField
          id={`${path}/photos`}
          label="Photos"
          isOptional
          hint="Made small on this device; where it was taken is left out."
          accept="image/*"
          multiple
          disabled={isKeeping}
          onChange={(event) => {
            const files = [...(event.currentTarget.files ?? [])];
            event.currentTarget.value = "";
            void keep(files);
          }}
        />
      ) : (
        <p className={styles.small}>A leak has {MOST_PHOTOS} photos at most.</p>
      )}
      <p role="status" className={styles.small}>
        {isKeeping ? "Keeping the photo" : ""}
      </p>
      {failed ? (
        <Notice
          kind="problem"
          title="The photo was not kept"
          isLive
          actions={
            <Button variant="secondary" onClick={() => void keep(failed.files)}>
              Try again
            </Button>
          }
        >
          <p>{failed.why}</p>
        </Notice>
      ) : null}
      <PhotoList path={path} site={site} number={number} />
    </div>
  );
}

const today = (): string => new Date().toLocaleDateString("en-CA");

async function sendPhoto(jobId: string, photo: Blob): Promise<string> {
  const reply = await fetch(`/jobs/${jobId}/photos`, { method: "POST", body: photo }).catch(() => null);
  if (!reply) throw new Error("There is no connection just now. The photo is still here; try again when there is.");
  const content = (await reply.json()) as { sha256?: string; detail?: string };
  if (!content.sha256) throw new Error(content.detail ?? "The photo could not be kept.");
  return content.sha256;
}
