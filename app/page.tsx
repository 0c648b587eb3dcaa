import { redirect } from "next/navigation";

/** The work is the jobs: the app opens on their list. */
export default function HomePage(): never {
  redirect("/jobs");
}
