/** One of the five numbers of a target. */
export interface BriefNumber {
  readonly name: string;
  readonly value: string;
}

/** What else is said of a corner, each line by itself. */
export interface BriefSection {
  readonly name: string;
  readonly lines: readonly string[];
}

export interface BriefCorner {
  readonly title: string;
  readonly subtitle: string;
  readonly numbers: readonly BriefNumber[];
  /** Only those that have something to say. */
  readonly sections: readonly BriefSection[];
}

/** The page taken to the test day, in words. Nothing in it is escaped yet: each way of writing it does that itself. */
export interface Brief {
  readonly title: string;
  readonly subtitle: string;
  readonly corners: readonly BriefCorner[];
  readonly cautions: readonly string[];
}
