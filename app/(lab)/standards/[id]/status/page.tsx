import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { FieldList } from "@/app/_ui/field-list";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { equipmentKindLabels, equipmentStateLabels } from "@/lib/domain/equipment/labels";
import { equipmentStatusView } from "@/lib/views/equipment-status";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { entryWords } from "../../entry-words";
import styles from "../../standards.module.css";

export const metadata = { title: "Status" };

type Props = { readonly params: Promise<{ readonly id: string }> };

/** What the code on the label opens, to be read from a step away, on a telephone at the furnace. */
export default async function EquipmentStatusPage({ params }: Props) {
  const actor = await requireStaff();
  const now = new Date();
  const status = await load(equipmentStatusView(actor, decodeURIComponent((await params).id), now));
  const mayBeUsed = status.against === null;
  return (
    <Page
      title={status.tag}
      crumbs={<Breadcrumb trail={[{ label: "Standards", href: "/standards" }]} />}
      lead={`${equipmentKindLabels[status.kind]}, serial number ${status.serial}`}
      actions={
        <LinkButton href={`/standards/${status.id}`} kind="primary">
          Its whole record
        </LinkButton>
      }
    >
      <p className={styles.verdict} data-use={mayBeUsed ? "yes" : "no"}>
        <span aria-hidden="true">{mayBeUsed ? "●" : "■"}</span> {mayBeUsed ? "May be used" : "Not to be used"}
      </p>
      {status.against ? <p className={styles.reason}>{status.against}</p> : null}
      <FieldList
        columns
        items={[
          { label: "State", value: equipmentStateLabels[status.state] },
          ...(status.kind === "furnace"
            ? []
            : [
                { label: "Calibration due", value: status.dueOn ?? "none accepted" },
                { label: "Certificate in force", value: status.certificate ?? "none" },
              ]),
          { label: "Next check", value: status.checkDueOn ?? "none planned" },
          { label: "Next maintenance", value: status.maintenanceDueOn ?? "none planned" },
          { label: "Where it is", value: status.location },
          { label: "Last in its logbook", value: entryWords(status.lastEntry) },
          { label: "As of", value: `${now.toISOString().slice(0, 16).replace("T", " ")} UTC` },
        ]}
      />
    </Page>
  );
}
