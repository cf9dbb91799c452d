package org.benchtrail.core.method;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What is recorded to identify the problem. Evidence may be added at any later step and is then marked late. */
public sealed interface IdentifyFact extends Fact {
    @Override
    default @Nullable Step step() {
        return Step.IDENTIFY;
    }

    @Override
    default boolean lateAllowed() {
        return true;
    }

    /** Evidence is taken at every step (a check's reading, the reading after the repair) and so is never late. */
    sealed interface Evidence extends IdentifyFact {
        @Override
        default @Nullable Step step() {
            return null;
        }
    }

    enum Answer {
        YES,
        NO,
        UNKNOWN
    }

    /** A symptom in the requester's words, and restated as something that anyone could observe. */
    record SymptomRecorded(String words, String observable, boolean intermittent) implements IdentifyFact {
        public SymptomRecorded {
            Texts t = new Texts();
            words = t.required("words", words, Texts.PARAGRAPH, "Write down what the requester said.");
            observable = t.required(
                    "observable",
                    observable,
                    Texts.PARAGRAPH,
                    "Say what can be seen, heard or measured when it happens.");
            t.done();
        }
    }

    /** When it began or last worked; {@code known} false says outright that nobody knows. */
    record OnsetRecorded(boolean known, String when) implements IdentifyFact {
        public OnsetRecorded {
            Texts t = new Texts();
            when = t.optional("when", when, Texts.LINE);
            t.require(!known || !when.isEmpty(), "when", "Say when it began or last worked, or choose 'unknown'.");
            t.done();
        }
    }

    enum Change {
        HARDWARE("hardware"),
        SOFTWARE("software, updates"),
        SETTINGS("settings"),
        PLACE("place or surroundings"),
        INFRASTRUCTURE("power, network, building");

        private final String words;

        Change(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** What changed before it began: each kind answered. */
    record ChangesAsked(Map<Change, Answer> answers, String note) implements IdentifyFact {
        public ChangesAsked {
            Texts t = new Texts();
            answers = complete(answers, Change.class);
            for (Change change : Change.values()) {
                t.require(
                        answers.containsKey(change),
                        "answers." + change,
                        "Ask whether " + change.words() + " changed: yes, no or unknown.");
            }
            note = t.optional("note", note, Texts.PARAGRAPH);
            t.require(
                    !answers.containsValue(Answer.YES) || !note.isEmpty(),
                    "note",
                    "Say what changed, since one answer is yes.");
            t.done();
        }
    }

    enum Scope {
        ONE("one user or device"),
        SEVERAL("several users or devices"),
        SITE("a whole site");

        private final String words;

        Scope(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    record ScopeRecorded(Scope scope, String note) implements IdentifyFact {
        public ScopeRecorded {
            Texts t = new Texts();
            t.require(scope != null, "scope", "Choose one, several or a site.");
            note = t.optional("note", note, Texts.PARAGRAPH);
            t.done();
        }
    }

    enum Reproduction {
        YES,
        NO,
        INTERMITTENT,
        UNSAFE_TO_TRY
    }

    record ReproductionTried(Reproduction outcome, String how) implements IdentifyFact {
        public ReproductionTried {
            Texts t = new Texts();
            t.require(outcome != null, "outcome", "Choose yes, no, intermittent or unsafe to try.");
            how = t.required("how", how, Texts.PARAGRAPH, "Say how it was tried, or why it was not.");
            t.done();
        }
    }

    enum Hazard {
        SMELL("burnt smell"),
        SMOKE("smoke"),
        HEAT("unusual heat"),
        SWELLING("swelling"),
        LIQUID("liquid inside or near"),
        MAINS_LEAD("damaged mains lead"),
        EXPOSED_WIRING("exposed wiring");

        private final String words;

        Hazard(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Every hazard looked for; any that is present stops the work until it is cleared. */
    record HazardsScreened(Map<Hazard, Boolean> present) implements IdentifyFact {
        public HazardsScreened {
            Texts t = new Texts();
            present = complete(present, Hazard.class);
            for (Hazard hazard : Hazard.values()) {
                t.require(
                        present.containsKey(hazard),
                        "present." + hazard,
                        "Look for " + hazard.words() + ": yes or no.");
            }
            t.done();
        }

        public boolean any() {
            return present.containsValue(true);
        }
    }

    /** A stop-work lifted: what made the place workable again, by somebody who acknowledged the caution. */
    record StopWorkCleared(String how, boolean acknowledged) implements IdentifyFact {
        public StopWorkCleared {
            Texts t = new Texts();
            how = t.required("how", how, Texts.PARAGRAPH, "Say what was done about the hazard.");
            t.require(acknowledged, "acknowledged", "Read the caution and tick that you have.");
            t.done();
        }
    }

    enum DataState {
        BACKUP_VERIFIED("backup verified"),
        TAKEN_NOW("backup taken now"),
        IMPOSSIBLE("backup impossible"),
        NO_USER_DATA("no user data");

        private final String words;

        DataState(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        public boolean backedUp() {
            return this == BACKUP_VERIFIED || this == TAKEN_NOW;
        }
    }

    record DataAnswered(DataState state, String note) implements IdentifyFact {
        public DataAnswered {
            Texts t = new Texts();
            t.require(state != null, "state", "Choose how the data stands.");
            note = t.optional("note", note, Texts.PARAGRAPH);
            t.require(state != DataState.IMPOSSIBLE || !note.isEmpty(), "note", "Say why no backup is possible.");
            t.done();
        }
    }

    /** A stretch of a log or of what the device said, with where it comes from. */
    record ExtractRecorded(String source, String text) implements Evidence {
        public ExtractRecorded {
            Texts t = new Texts();
            source = t.required("source", source, Texts.LINE, "Name the log or screen that this comes from.");
            text = t.required("text", text, 20_000, "Paste the lines that matter.");
            t.done();
        }
    }

    /** A file kept beside the ticket; the bytes are stored once and named by their SHA-256. */
    record AttachmentAdded(String fileName, String mediaType, long bytes, String sha256, String shows)
            implements Evidence {
        public AttachmentAdded {
            Texts t = new Texts();
            fileName = t.required("fileName", fileName, Texts.LINE, "The file needs a name.");
            mediaType = t.required("mediaType", mediaType, Texts.LINE, "The file needs a media type.");
            t.require(bytes > 0, "file", "The file is empty: choose another.");
            // beyond, a number of the canonical form would not be exact
            t.require(bytes <= 1L << 53, "bytes", "No file is that large.");
            t.require(
                    sha256 != null && sha256.matches("[0-9a-f]{64}"), "sha256", "A SHA-256 is 64 hexadecimal digits.");
            shows = t.required("shows", shows, Texts.LINE, "Say what the file shows.");
            t.done();
        }
    }

    record EvidenceImpossible(String reason) implements IdentifyFact {
        public EvidenceImpossible {
            Texts t = new Texts();
            reason = t.required("reason", reason, Texts.PARAGRAPH, "Say why there is no reading, log or picture.");
            t.done();
        }
    }

    record LogsReviewed(boolean looked, String note) implements IdentifyFact {
        public LogsReviewed {
            Texts t = new Texts();
            note = t.required(
                    "note",
                    note,
                    Texts.PARAGRAPH,
                    "Say what the logs show (nothing is an answer), or why they were not read.");
            t.done();
        }
    }

    /** Similar tickets and known causes were shown and looked at; the list may be empty. */
    record LikenessChecked(List<String> shown) implements IdentifyFact {
        public LikenessChecked {
            Texts t = new Texts();
            List<String> given = shown == null ? List.of() : shown;
            t.require(given.size() <= 200, "shown", "Name at most 200 of what was shown.");
            shown = given.stream().map(s -> t.optional("shown", s, Texts.LINE)).toList();
            t.done();
        }
    }

    /** Something observed that bears on causes. A drive-failure finding puts data first from that moment on. */
    record FindingRecorded(String text, boolean driveFailure) implements Evidence {
        public FindingRecorded {
            Texts t = new Texts();
            text = t.required("text", text, Texts.PARAGRAPH, "Say what was found.");
            t.done();
        }
    }

    /** A measured value held against its limit; in-between values are {@code NOT_JUDGED} where no limit is known. */
    enum Verdict {
        WITHIN,
        OUTSIDE,
        NOT_JUDGED
    }

    /**
     * A measured value as it was typed.
     *
     * @param quantity what was measured, such as "processor temperature"
     * @param value decimal, as a string so that nothing is lost
     * @param unit of the value and of the limits
     * @param point where it was measured
     * @param instrument what it was measured with; empty if not told
     * @param lower lowest value that conforms, inclusive; null if there is none
     * @param upper highest value that conforms, inclusive; null if there is none
     * @param limitSource where the limit comes from; empty without limits
     */
    record ReadingRecorded(
            String quantity,
            String value,
            String unit,
            String point,
            String instrument,
            @Nullable String lower,
            @Nullable String upper,
            String limitSource)
            implements Evidence {
        public ReadingRecorded {
            Texts t = new Texts();
            quantity = t.required("quantity", quantity, Texts.LINE, "Say what was measured.");
            t.require(value != null && !value.isBlank(), "value", "Give the measured value.");
            value = decimal(t, "value", value);
            unit = t.required("unit", unit, 40, "Give the unit; for a plain count write 'count'.");
            point = t.required("point", point, Texts.LINE, "Say where it was measured.");
            instrument = t.optional("instrument", instrument, Texts.LINE);
            lower = decimal(t, "lower", lower);
            upper = decimal(t, "upper", upper);
            limitSource = t.optional("limitSource", limitSource, Texts.LINE);
            t.require(
                    (lower == null && upper == null) || !limitSource.isEmpty(),
                    "limitSource",
                    "Say where the limit comes from: a standard, the nameplate, or site policy.");
            if (lower != null && upper != null) {
                t.require(
                        new BigDecimal(lower).compareTo(new BigDecimal(upper)) <= 0,
                        "upper",
                        "The upper limit is below the lower one.");
            }
            t.done();
        }

        /** By plain comparison, limits inclusive. */
        public Verdict verdict() {
            if (lower == null && upper == null) {
                return Verdict.NOT_JUDGED;
            }
            BigDecimal measured = new BigDecimal(value);
            boolean above = upper != null && measured.compareTo(new BigDecimal(upper)) > 0;
            boolean below = lower != null && measured.compareTo(new BigDecimal(lower)) < 0;
            return above || below ? Verdict.OUTSIDE : Verdict.WITHIN;
        }

        /** Whether the other reading is of the same quantity at the same point, whatever the letter case. */
        public boolean samePlace(ReadingRecorded other) {
            return quantity.equalsIgnoreCase(other.quantity) && point.equalsIgnoreCase(other.point);
        }

        private static @Nullable String decimal(Texts t, String field, @Nullable String typed) {
            if (typed == null || typed.isBlank()) {
                return null;
            }
            String text = typed.strip().replace('\u2212', '-');
            if (text.indexOf('.') < 0) {
                text = text.replaceFirst(",(?=\\d+$)", ".");
            }
            boolean number = text.matches("[+-]?\\d{1,15}(\\.\\d{1,15})?");
            t.require(number, field, "Write a plain decimal number such as 11.38 (without its unit).");
            if (!number) {
                return null;
            }
            return text.startsWith("+") ? text.substring(1) : text;
        }
    }

    private static <K extends Enum<K>, V> Map<K, V> complete(@Nullable Map<K, V> given, Class<K> keys) {
        Map<K, V> copy = new EnumMap<>(keys);
        if (given != null) {
            given.forEach((key, value) -> {
                if (value != null) {
                    copy.put(key, value);
                }
            });
        }
        return java.util.Collections.unmodifiableMap(copy);
    }
}
