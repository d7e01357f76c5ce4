import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { DateField } from "@/app/_ui/date-field.client";
import { FileField } from "@/app/_ui/file-field.client";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { Tabs } from "@/app/_ui/tabs";
import { TextArea } from "@/app/_ui/text-area.client";
import { isoDay } from "@/lib/domain/calibration/due";
import { entryKindLabels } from "@/lib/domain/equipment/labels";
import { entryKinds } from "@/lib/domain/equipment/logbook";
import { equipmentView } from "@/lib/views/equipment";
import { equipmentServiceView } from "@/lib/views/equipment-service";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { recordEntryAction } from "../../../actions";
import { entryConsequence } from "../../../entry-consequence";
import { EntryFields } from "../../../entry-fields";

export const metadata = { title: "Write into the logbook" };

type Props = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly kind?: string | string[] }>;
};

export default async function NewEntryPage({ params, searchParams }: Props) {
  const actor = await requirePermission("equipment.record");
  const { id } = await params;
  const today = isoDay(new Date());
  const { equipment } = await load(equipmentView(actor, id, today));
  const { charts } = await load(equipmentServiceView(actor, id, today));
  const kinds = entryKinds.filter(
    (kind) => equipment.kind === "reference" || (kind !== "anneal" && kind !== "check-after-anneal"),
  );
  const asked = (await searchParams).kind;
  const first = equipment.state === "in-service" ? "intermediate-check" : "verification";
  const kind = kinds.find((known) => known === asked) ?? first;
  const here = `/standards/${equipment.id}`;
  const address = (one: string) => `${here}/logbook/new?kind=${one}`;
  const trail = [
    { label: "Standards", href: "/standards" },
    { label: equipment.tag, href: here },
  ];
  return (
    <Page
      title={`Write into the logbook of ${equipment.tag}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead={entryConsequence[kind]}
    >
      <Tabs
        label="Kind of entry"
        current={address(kind)}
        tabs={kinds.map((one) => ({ label: entryKindLabels[one], href: address(one) }))}
      />
      {kind === "anneal" ? (
        <Notice kind="danger" title="Danger: hot wires and furnaces burn">
          Wires annealed by current glow at about 1450 °C and carry it: guard them, keep off, and let them
          cool. Your own rules and the makers’ manuals go before anything said here.
        </Notice>
      ) : null}
      <ActionForm key={kind} action={recordEntryAction} label="Write into the logbook">
        <input type="hidden" name="id" value={equipment.id} />
        <input type="hidden" name="figures.kind" value={kind} />
        <DateField name="happenedOn" label="Day" defaultValue={today} />
        <EntryFields
          kind={kind}
          checks={charts.map(({ quantity, unit, points }) => ({
            quantity,
            unit,
            limit: points.at(-1)?.limit,
          }))}
        />
        <TextArea name="summary" label="What was done and found" rows={2} />
        <FileField name="document" label="File" hint="PDF, image or XML; kept by its hash." optional />
        <div className="form-actions">
          <SubmitButton>Write it down</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
