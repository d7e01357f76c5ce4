import { Text } from "@react-pdf/renderer";
import { Fragment } from "react";
import { Say } from "./say";
import { styles } from "./styles";
import type { Said } from "./words";

/** A label, or none where the caption beside it says enough; its value; how strongly it is set. */
export type LabelledFact = readonly [label: Said | null, value: Said, weight?: "strong"];

const inLanguage = (of: readonly LabelledFact[], at: number): string =>
  of
    .map(([label, value]) => [...(label ? [label[at] ?? label[0]] : []), value[at] ?? value[0]].join(" "))
    .join(" · ");

/** Labels and values on one line, "Received 2026-10-08 · Measured 2026-10-14"; further languages below it. */
export const Facts = ({ of }: { readonly of: readonly LabelledFact[] }) => {
  if (of.length === 0) return null;
  const languages = Math.max(...of.flatMap(([label, value]) => [label?.length ?? 1, value.length]));
  const further = Array.from({ length: languages - 1 }, (_, at) => inLanguage(of, at + 1));
  return (
    <>
      <Text>
        {of.map(([label, value, weight], at) => (
          <Fragment key={label?.[0] ?? value[0]}>
            {at === 0 ? "" : <Text style={styles.muted}> · </Text>}
            {label === null ? "" : <Text style={styles.muted}>{label[0]} </Text>}
            {weight ? <Text style={styles.strong}>{value[0]}</Text> : value[0]}
          </Fragment>
        ))}
      </Text>
      {further.map((line) => (
        <Say key={line} said={[line]} style={styles.further} />
      ))}
    </>
  );
};
