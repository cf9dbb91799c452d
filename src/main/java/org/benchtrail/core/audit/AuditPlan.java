package org.benchtrail.core.audit;

import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.Invalid;

/**
 * What will be looked at of a period, said before it ends. Its bytes are part of the seed, so that a changed plan draws another
 * sample.
 *
 * @param lot year and month, such as {@code 2026-11}; a second plan for the same month has a letter behind it
 * @param from of the period
 * @param until of the period, not part of it
 * @param takes how many of each stratum
 * @param acceptance the random part is accepted with at most so many tickets that have a critical or major defect
 * @param otherwise what follows if it is not accepted
 * @param witness name of the key of the witness whose signature the draw waits for; empty for none
 */
public record AuditPlan(
        String lot,
        Instant from,
        Instant until,
        Map<Stratum, Take> takes,
        int acceptance,
        Otherwise otherwise,
        String witness) {
    /** What follows if the random part is not accepted. */
    public enum Otherwise {
        REVIEW_ALL("the rest of it is to be reviewed"),
        DOUBLE_NEXT("twice as many are to be drawn from the next lot");

        private final String words;

        Otherwise(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    private static final String HEAD = "audit-plan/1";
    private static final Pattern LOT = Pattern.compile("[0-9]{4}-(0[1-9]|1[0-2])[a-z]?");
    private static final Pattern TEXT = Pattern.compile(
            HEAD
                    + "\nlot (\\S+)\nfrom (\\S+)\nuntil (\\S+)\n((?:take \\S+ \\S+\n)+)accept ([0-9]{1,4})\nelse (\\S+)\nwitness (\\S+)\n");

    public AuditPlan {
        EnumMap<Stratum, Take> all = new EnumMap<>(Stratum.class);
        all.putAll(takes);
        new Invalid.Collector()
                .require(isLot(lot), "lot", "Name the lot by year and month, such as 2026-11.")
                .require(from.isBefore(until), "until", "The period ends after it begins.")
                .require(all.size() == Stratum.values().length, "takes", "Say for each part how many are looked at.")
                .require(
                        acceptance >= 0 && acceptance <= 999,
                        "acceptance",
                        "Say with how many defects the lot is still accepted, 0 to 999.")
                .require(witness.matches("\\S{0,200}"), "witness", "The name of a witness has no blanks.")
                .throwIfAny();
        takes = Collections.unmodifiableMap(all);
    }

    public static boolean isLot(String lot) {
        return LOT.matcher(lot).matches();
    }

    /** The plan in lines of ASCII, each with its newline. */
    public String text() {
        StringBuilder text = new StringBuilder(HEAD)
                .append("\nlot ")
                .append(lot)
                .append("\nfrom ")
                .append(from)
                .append("\nuntil ")
                .append(until)
                .append('\n');
        takes.forEach((stratum, take) -> text.append("take ")
                .append(stratum.word())
                .append(' ')
                .append(take.word())
                .append('\n'));
        return text.append("accept ")
                .append(acceptance)
                .append("\nelse ")
                .append(otherwise == Otherwise.REVIEW_ALL ? "review-all" : "double-next")
                .append("\nwitness ")
                .append(witness.isEmpty() ? "none" : witness)
                .append('\n')
                .toString();
    }

    public byte[] bytes() {
        return text().getBytes(StandardCharsets.UTF_8);
    }

    /** @throws Invalid if it is not what {@link #text} writes */
    public static AuditPlan parse(String text) {
        Matcher read = TEXT.matcher(text);
        if (!read.matches()) {
            throw unreadable();
        }
        EnumMap<Stratum, Take> takes = new EnumMap<>(Stratum.class);
        for (String line : read.group(4).split("\n", -1)) {
            for (Stratum stratum : Stratum.values()) {
                String start = "take " + stratum.word() + " ";
                if (line.startsWith(start)) {
                    takes.put(stratum, Take.parse(line.substring(start.length())));
                }
            }
        }
        try {
            return new AuditPlan(
                    read.group(1),
                    Instant.parse(read.group(2)),
                    Instant.parse(read.group(3)),
                    takes,
                    Integer.parseInt(read.group(5)),
                    read.group(6).equals("review-all") ? Otherwise.REVIEW_ALL : Otherwise.DOUBLE_NEXT,
                    read.group(7).equals("none") ? "" : read.group(7));
        } catch (DateTimeException e) {
            throw unreadable();
        }
    }

    private static Invalid unreadable() {
        return new Invalid(
                "plan",
                "The plan was altered: what is kept is no plan of an audit. A look at the whole site, from Seal, says what else is not as"
                        + " it was sealed.");
    }
}
