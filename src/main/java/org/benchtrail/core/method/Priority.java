package org.benchtrail.core.method;

/**
 * How soon a ticket is due, from impact and urgency (common practice, no source: the usual three-by-three matrix).
 */
public enum Priority {
    AT_ONCE("at once", 4),
    SAME_DAY("same day", 8),
    THIS_WEEK("this week", 72),
    WHEN_PLANNED("when planned", 240);

    /** Whom the trouble touches. */
    public enum Impact {
        ONE_PERSON("one person or device"),
        SEVERAL("several people"),
        WHOLE_SITE("a whole site");

        private final String words;

        Impact(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** How much work is held up. */
    public enum Urgency {
        CAN_WAIT("can wait"),
        HINDERED("work is hindered"),
        STOPPED("work is stopped");

        private final String words;

        Urgency(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    private final String words;
    private final int hours;

    Priority(String words, int hours) {
        this.words = words;
        this.hours = hours;
    }

    public String words() {
        return words;
    }

    /** Hours from opening until it is due, around the clock. */
    public int hours() {
        return hours;
    }

    public static Priority of(Impact impact, Urgency urgency) {
        int weight = impact.ordinal() + urgency.ordinal();
        return switch (weight) {
            case 4 -> AT_ONCE;
            case 3 -> SAME_DAY;
            case 2 -> urgency == Urgency.CAN_WAIT ? THIS_WEEK : SAME_DAY;
            case 1 -> THIS_WEEK;
            default -> WHEN_PLANNED;
        };
    }
}
