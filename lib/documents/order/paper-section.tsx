import { Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { styles } from "./paper-styles";

/** A caption in the margin column and what it is about beside it. Kept on one page unless it says it may break. */
export const Section = ({
  caption,
  mayBreak = false,
  children,
}: {
  readonly caption: string;
  readonly mayBreak?: boolean;
  readonly children: ReactNode;
}) => (
  <View style={styles.section} wrap={mayBreak}>
    <Text style={styles.caption}>{caption}</Text>
    <View style={styles.body}>{children}</View>
  </View>
);
