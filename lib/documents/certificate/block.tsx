import { View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { Say } from "./say";
import { styles } from "./styles";
import type { Said } from "./words";

/** Rows up to which a table stays on one page, whole. */
export const rowsKept = 16;

type BlockProps = {
  readonly title?: Said;
  /** What has to be read before the rest, under the title. */
  readonly introduction?: ReactNode;
  /** A line under the title: which item, set and run. */
  readonly heading?: Said;
  /** Room that must follow the title on its page where the block itself may break, pt. */
  readonly keepAhead?: number;
  readonly isWhole: boolean;
  readonly gap?: number;
  readonly children: ReactNode;
};

/**
 * A title with what it stands over. Whole: on one page. Otherwise a fragment, because a title asks for room after it only
 * where it has a brother before it: inside a view of its own it would be the first and be left alone at a page's foot.
 */
export const Block = ({
  title,
  introduction,
  heading,
  keepAhead = 90,
  isWhole,
  gap = 13,
  children,
}: BlockProps) => {
  const over = (
    <View style={{ marginTop: title ? gap : 8, marginBottom: 4 }} minPresenceAhead={keepAhead} wrap={false}>
      {title ? <Say said={title} style={styles.blockTitle} lesser={{ fontSize: 9.5 }} /> : null}
      {introduction ? <View style={{ marginTop: 3 }}>{introduction}</View> : null}
      {heading ? (
        <Say
          said={heading}
          style={{ ...styles.strong, marginTop: title ? 3 : 0 }}
          lesser={{ fontSize: 8, marginTop: 0 }}
        />
      ) : null}
    </View>
  );
  if (!isWhole)
    return (
      <>
        {over}
        {children}
      </>
    );
  return (
    <View wrap={false}>
      {over}
      {children}
    </View>
  );
};
