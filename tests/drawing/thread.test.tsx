import { readFileSync } from "node:fs";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { type Bead, Thread } from "@/app/_ui/thread";

const markup = (beads: readonly Bead[], ofStates?: boolean) =>
  renderToStaticMarkup(<Thread beads={beads} ofStates={ofStates} />);
const words = (...parts: Parameters<typeof markup>) =>
  [...markup(...parts).matchAll(/<li.*?<\/li>/g)].map(([item]) => item.replaceAll(/<[^>]+>/g, ""));

const run = (state: Bead["state"]): readonly Bead[] => [
  { label: "Submitted", state: "done" },
  { label: "Signed off", state },
];

describe("a thread", () => {
  it("names the step at work as the next one: its label tells of it done", () => {
    expect(words(run("now"))).toEqual(["Submitted, done", "next: Signed off, comes next"]);
    expect(words(run("next"))[1]).toBe("Signed off, to come");
  });

  it("says a state that was reached, a first step and a count as they are", () => {
    expect(words(run("now"), true)[1]).toBe("Signed off, now");
    expect(words([{ label: "Ordered", state: "now" }])).toEqual(["Ordered, now"]);
    const counted: readonly Bead[] = [
      { label: "Accepted", state: "done" },
      { label: "Received 2 of 4", state: "now" },
    ];
    expect(words(counted)[1]).toBe("Received 2 of 4, now");
  });

  it("marks the end it has come to, whose name a phone shows", () => {
    expect(markup(run("done")).match(/class="thread-end"/g)).toHaveLength(1);
    expect(markup(run("done"))).toMatch(/thread-end.*Signed off/);
    expect(markup(run("now"))).not.toContain("thread-end");
    expect(markup(run("stopped"))).not.toContain("thread-end");
  });

  it("lets a long name wrap on a phone: the page is no wider than it", () => {
    const sheet = readFileSync("app/_ui/css/thread.css", "utf8");
    expect(sheet).not.toContain("nowrap");
    expect(sheet).toContain("max-width: 60%");
  });
});
