import { expect, it } from "vitest";
import { ended, spawnNode } from "@/tests/support/spawn-node";
import { documentHashes } from "./print-hashes";

it("the same content gives the same bytes: again, in another order, and in another process of another time zone", async () => {
  const other = ended(
    spawnNode("tests/documents/certificate/print-hashes.ts", ["print"], {
      TZ: "Pacific/Auckland",
      LANG: "de_DE.UTF-8",
    }),
  );
  const first = await documentHashes(false);
  expect(await documentHashes(true)).toEqual(first);
  expect(await other).toEqual({ code: 0, stdout: `${first.join("\n")}\n`, stderr: "" });
});
