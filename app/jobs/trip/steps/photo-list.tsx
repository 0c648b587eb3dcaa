"use client";

import { useState } from "react";
import { Button } from "#app/design/button.tsx";
import { Notice } from "#app/design/notice.tsx";
import { type Draft, listAt, textAt } from "../draft.ts";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";

/** What became of a photo that was to be deleted. */
type Deletion = { state: "asked" | "deleting" } | { state: "held" | "failed"; why: string };

/** The photos of a leak, each of which can be deleted for good after a question. */
export function PhotoList({ path, site, number }: { path: string; site: Draft; number: number }) {
  const { jobId, draft, set } = useTrip();
  const [asked, setAsked] = useState<{ sha256: string; deletion: Deletion }>();
  const photos = listAt(site, "photos");
  if (photos.length === 0) return null;

  const without = (each: Draft, sha256: string): Draft => {
    const { photos: _all, ...rest } = each;
    const left = listAt(each, "photos").filter((photo) => photo.sha256 !== sha256);
    return left.length > 0 ? { ...rest, photos: left } : rest;
  };
  const takeOff = (sha256: string) => {
    set(path, without(site, sha256));
    setAsked(undefined);
  };
  const deleteForGood = async (sha256: string) => {
    setAsked({ sha256, deletion: { state: "deleting" } });
    const reply = await fetch(`/jobs/${jobId}/photos/${sha256}`, { method: "DELETE" }).catch(() => null);
    // One that is not on this server is as good as deleted.
    if (reply?.ok || reply?.status === 404) {
      set(
        "sites",
        listAt(draft, "sites").map((each) => without(each, sha256)),
      );
      return setAsked(undefined);
    }
    const { detail } = ((await reply?.json().catch(() => null)) ?? {}) as { detail?: string };
    setAsked({
      sha256,
      deletion:
        reply?.status === 409
          ? { state: "held", why: detail ?? "" }
          : { state: "failed", why: detail ?? "There is no connection just now. The photo is still there." },
    });
  };
  return (
    <ul className={styles.photoList}>
      {photos.map((photo, index) => {
        const sha256 = textAt(photo, "sha256") ?? "";
        const deletion = asked?.sha256 === sha256 ? asked.deletion : undefined;
        return (
          <li key={sha256} className={deletion ? styles.askedPhoto : undefined}>
            {/* biome-ignore lint/performance/noImgElement: a private picture of this job, already small */}
            <img
              src={`/jobs/${jobId}/photos/${sha256}`}
              alt={`Leak ${number}, number ${index + 1}. Not on this server`}
              loading="lazy"
            />
            <Button
              variant="quiet"
              aria-expanded={deletion !== undefined}
              onClick={() => setAsked(deletion ? undefined : { sha256, deletion: { state: "asked" } })}
            >
              Delete<span className={styles.hidden}> photo {index + 1}</span>
            </Button>
            {deletion ? (
              <PhotoQuestion
                deletion={deletion}
                onDelete={() => void deleteForGood(sha256)}
                onTakeOff={() => takeOff(sha256)}
                onKeep={() => setAsked(undefined)}
              />
            ) : null}
          </li>
        );
      })}
    </ul>
  );
}

/** The question stands where the photo is, so that nobody deletes the wrong one. */
function PhotoQuestion({
  deletion,
  onDelete,
  onTakeOff,
  onKeep,
}: {
  deletion: Deletion;
  onDelete: () => void;
  onTakeOff: () => void;
  onKeep: () => void;
}) {
  if (deletion.state === "held") {
    return (
      <Notice
        kind="info"
        word="Kept"
        title="This photo stays"
        isLive
        actions={
          <>
            <Button variant="secondary" onClick={onTakeOff}>
              Only take it off this leak
            </Button>
            <Button variant="quiet" onClick={onKeep}>
              Leave it
            </Button>
          </>
        }
      >
        <p>{deletion.why}. Whoever checks the claim may ask to see it, so it is not deleted.</p>
      </Notice>
    );
  }
  return (
    <Notice
      kind="doubt"
      word="Delete"
      title="Delete this photo for good?"
      isLive
      actions={
        <>
          <Button variant="danger" disabled={deletion.state === "deleting"} onClick={onDelete}>
            Delete it
          </Button>
          <Button variant="quiet" onClick={onKeep}>
            Keep it
          </Button>
        </>
      }
    >
      {deletion.state === "failed" ? <p>{deletion.why}</p> : null}
      <p>
        It goes from this server and from every leak of this job, and cannot be brought back. Papers that were printed
        or saved keep their copy. A photo that a claim handed in has bound by its hash is not deleted.
      </p>
    </Notice>
  );
}
