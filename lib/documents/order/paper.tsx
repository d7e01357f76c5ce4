import { Document, Page, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { documentFont } from "../fonts";
import { styles } from "./paper-styles";

type PaperProps = {
  readonly title: string;
  readonly number: string;
  /** YYYY-MM-DD: the dates inside the file come from the content, so that the same content gives the same bytes. */
  readonly on: string;
  readonly laboratory: {
    readonly name: string;
    readonly addressLines: readonly string[];
    readonly contact: string;
    readonly isDemo: boolean;
  };
  readonly subject: string;
  readonly children: ReactNode;
};

/** The frame of every paper of an order: who sends it, its number, page n of N. */
export const Paper = ({ title, number, on, laboratory, subject, children }: PaperProps) => {
  const date = new Date(`${on}T00:00:00Z`);
  return (
    <Document
      title={`${title} ${number}`}
      author={laboratory.name}
      subject={subject}
      creator="Emfolio"
      producer="Emfolio"
      language="en"
      creationDate={date}
      modificationDate={date}
    >
      <Page size="A4" style={[styles.page, { fontFamily: documentFont() }]}>
        <View style={styles.head} fixed>
          <View style={styles.headMark} />
          <View>
            <Text style={styles.headName}>{laboratory.name}</Text>
            <Text style={[styles.small, styles.muted]}>
              {[...laboratory.addressLines, laboratory.contact].filter(Boolean).join(", ")}
            </Text>
          </View>
          <View style={{ alignItems: "flex-end" }}>
            <Text style={styles.headNumber}>{number}</Text>
            <Text style={[styles.small, styles.muted, styles.number]}>{title}</Text>
          </View>
        </View>
        <View style={styles.foot} fixed>
          <Text>{laboratory.isDemo ? "Demonstration, all data invented" : laboratory.name}</Text>
          <Text render={({ pageNumber, totalPages }) => `${number} · page ${pageNumber} of ${totalPages}`} />
        </View>
        {children}
      </Page>
    </Document>
  );
};

export const Lines = ({ of }: { readonly of: readonly string[] }) =>
  of.filter((line) => line !== "").map((line) => <Text key={line}>{line}</Text>);
