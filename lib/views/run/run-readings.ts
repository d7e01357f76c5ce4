import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "@/lib/views/view";
import { loadHead, runHead } from "./run-head";

/** What came in so far, block by block; and what a new file or a typed entry may name. */
export const runReadingsView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const loaded = await loadHead(tx, number, []);
    const { run, evidence } = loaded;
    const blocks = await tx.scanBlock.findMany({
      where: { runId: run.id },
      orderBy: { sequence: "asc" },
      include: { channels: { select: { channel: true, count: true }, orderBy: { ordinal: "asc" } } },
    });
    const people = await tx.person.findMany({
      where: { id: { in: blocks.map(({ receivedById }) => receivedById) } },
      select: { id: true, name: true },
    });
    return {
      head: await runHead(tx, actor, loaded),
      channels: evidence.load.map(({ channel, item, place }) => ({
        channel,
        label: item.kind === "shorted" ? "shorted" : item.id,
        place,
      })),
      blocks: blocks.map((block) => ({
        sequence: block.sequence,
        source: block.source as "file" | "typed",
        fileName: block.fileName,
        readings: block.readingCount,
        channels: block.channels.map(({ channel }) => channel),
        root: Buffer.from(block.root).toString("hex"),
        receivedBy: people.find(({ id }) => id === block.receivedById)?.name ?? "",
        receivedAt: block.receivedAt.toISOString(),
      })),
    };
  });

export type RunReadingsView = Awaited<ReturnType<typeof runReadingsView>>;
