import { Text, View } from "@react-pdf/renderer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { styles } from "./styles";

/** 7.8.2.1 a, b, d: on every page who issued it, its number, and page n of N. */
export const PageHead = ({ content }: { readonly content: CertificateContent }) => (
  <View style={styles.head} fixed>
    <View style={styles.headMark} />
    <View>
      <Text style={styles.headName}>{content.laboratory.name}</Text>
      <Text style={[styles.small, styles.muted]}>{content.laboratory.addressLines.join(", ")}</Text>
    </View>
    <View style={{ alignItems: "flex-end" }}>
      <Text style={styles.headNumber}>{content.number}</Text>
      <Text style={[styles.small, styles.muted, styles.number]}>{content.title}</Text>
    </View>
  </View>
);

export const PageFoot = ({
  content,
  contentHash,
}: {
  readonly content: CertificateContent;
  readonly contentHash: string;
}) => (
  <View style={styles.foot} fixed>
    <Text>
      {content.laboratory.demonstration ? "Demonstration, all data invented · " : ""}
      Content {contentHash.slice(0, 16)}
    </Text>
    <Text
      render={({ pageNumber, totalPages }) => `${content.number} · page ${pageNumber} of ${totalPages}`}
    />
  </View>
);

/** What a person sees before sign-off: on every page, across the text. */
export const Watermark = () => (
  <Text style={styles.watermark} fixed>
    DRAFT
  </Text>
);
