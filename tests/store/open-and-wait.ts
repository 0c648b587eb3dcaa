/** A program that opens the store, says so, and stays until it is told to stop: what an app process does. */
import { openStore } from "#lib/store/open-store.ts";

try {
  const store = await openStore();
  process.stdout.write("open\n");
  process.once("SIGTERM", async () => {
    await store.close();
    process.exit(0);
  });
  setInterval(() => undefined, 1000);
} catch (error) {
  process.stdout.write(`${error instanceof Error && "code" in error ? error.code : "unexpected"}\n`);
  process.stderr.write(String(error));
  process.exit(3);
}
