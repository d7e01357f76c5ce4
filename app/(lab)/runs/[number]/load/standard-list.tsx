import { DataTable } from "@/app/_ui/data-table";
import { Section } from "@/app/_ui/section";
import type { RunLoadView } from "@/lib/views/run/run-load";

/** What every number of the run stands on. */
export function StandardList({ standards }: Pick<RunLoadView, "standards">) {
  return (
    <Section title="Standards" note="With the certificates that were in force on the day.">
      <DataTable
        caption="References, voltmeter, scanner and reference junctions of this run"
        captionUnseen
        columns={[
          { key: "id", header: "Tag" },
          { key: "role", header: "Role" },
          { key: "certificate", header: "Certificate" },
          { key: "due", header: "Due" },
        ]}
        rows={standards.map(({ role, id, certificate, dueOn }) => ({
          key: id,
          cells: {
            id,
            role,
            certificate: certificate ?? "none: its own figures",
            due: dueOn ?? "not stated",
          },
        }))}
      />
    </Section>
  );
}
