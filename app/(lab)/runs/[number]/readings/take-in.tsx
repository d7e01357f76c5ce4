import { Disclosure } from "@/app/_ui/disclosure";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import type { RunReadingsView } from "@/lib/views/run/run-readings";
import { FormatHelp } from "./format-help";
import { TypedForm } from "./typed-form";
import { UploadForm } from "./upload-form.client";

/** The two ways in; before the gate neither is offered, and the way there is. */
export function TakeIn({ view }: { readonly view: RunReadingsView }) {
  const { head } = view;
  if (!head.progress.gatePassed && !head.progress.hasReadings)
    return (
      <Notice kind="caution" title="Caution: this run has not passed its gate">
        No reading is taken in before it has. Record the same-day checks and start the run there.{" "}
        <LinkButton href={`/runs/${head.number}/gate`}>To the gate</LinkButton>
      </Notice>
    );
  return (
    <>
      <Section title="Upload" note="Large files take a while; you can stop, and nothing half is stored.">
        <UploadForm run={head.number} asksStart={head.startedAt === null} />
        <FormatHelp />
      </Section>
      <Section
        title="Type them in"
        note="From a paper record, each reading twice. They stay marked as typed."
      >
        <Disclosure summary="Open the two entries">
          <TypedForm view={view} />
        </Disclosure>
      </Section>
    </>
  );
}
