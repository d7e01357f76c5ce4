import { View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { Say } from "./say";
import { styles } from "./styles";
import type { Said } from "./words";

type SectionProps = {
  readonly caption: Said;
  readonly mayBreak?: boolean;
  readonly children: ReactNode;
};

/** A caption in the margin column and what it is about beside it. Kept on one page unless it says it may break. */
export const Section = ({ caption, mayBreak = false, children }: SectionProps) => (
  <View style={styles.section} wrap={mayBreak}>
    <View style={styles.caption}>
      <Say said={caption} />
    </View>
    <View style={styles.body}>{children}</View>
  </View>
);
