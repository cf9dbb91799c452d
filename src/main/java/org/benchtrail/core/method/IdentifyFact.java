package org.benchtrail.core.method;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.measure.Accuracy;
import org.benchtrail.core.measure.Judgement;
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

    /**
     * A question of the cause catalogue answered.
     *
     * @param finding its id in the catalogue
     * @param question its words at that moment
     * @param value one of the finding's values, or {@code unknown}, which weighs nothing
     * @param source how it is known
     */
    record FindingAnswered(String finding, String question, String value, Source source) implements Evidence {
        public FindingAnswered {
            Texts t = new Texts();
            finding = t.required("finding", finding, 80, "Name the finding of the catalogue.");
            question = t.required("question", question, Texts.LINE, "Write the question that was answered.");
            value = t.required("value", value, 40, "Choose the answer, or 'unknown'.");
            t.require(source != null, "source", "Say how it is known: measured, seen, or told.");
            t.done();
        }
    }

    /** A figure of a calculation, as it was shown. */
    record Figure(String name, String value, String unit) {}

    /**
     * What a calculation of the bench said, with what it was given, so that anybody can work it again.
     *
     * @param calculation stable id of the calculation
     * @param version of the calculation
     * @param title of the calculation
     * @param input its input record as JSON
     * @param level how the answer is to be taken
     * @param verdict in a few words
     * @param reason one sentence with the numbers
     */
    record BenchResultAttached(
            String calculation,
            int version,
            String title,
            String input,
            Result.Level level,
            String verdict,
            String reason,
            List<Figure> figures)
            implements Evidence {
        /** Room for a series of ten thousand points. */
        private static final int LONGEST_INPUT = 1_000_000;

        public BenchResultAttached {
            Texts t = new Texts();
            calculation = t.required("calculation", calculation, 80, "Name the calculation.");
            title = t.required("title", title, Texts.LINE, "Name the calculation.");
            input = t.required("input", input, LONGEST_INPUT, "Give what was calculated with.");
            t.require(level != null, "level", "Say how the answer is to be taken.");
            verdict = t.required("verdict", verdict, Texts.LINE, "Say what came out.");
            reason = t.required("reason", reason, 20_000, "Say why.");
            figures = figures == null ? List.of() : List.copyOf(figures);
            t.done();
        }
    }

    /** How long an intermittent fault has to run clean by calculation; it can lengthen the policy's time, not shorten it. */
    record SoakTimeReckoned(int minutes, String basis) implements Evidence {
        public SoakTimeReckoned {
            Texts t = new Texts();
            t.require(minutes >= 1 && minutes <= 525_600, "minutes", "Give the time in minutes, 1 to 525600 (a year).");
            basis = t.required("basis", basis, Texts.LINE, "Say how it was reckoned.");
            t.done();
        }
    }

    /** A measured value held against its limit; in-between values are {@code NOT_JUDGED} where no limit is known. */
    enum Verdict {
        WITHIN,
        OUTSIDE,
        /** The limit lies within the guard band about the value. */
        TOO_CLOSE,
        NOT_JUDGED
    }

    /**
     * A measured value.
     *
     * @param quantity what was measured, such as "processor temperature"
     * @param value decimal, as a string so that nothing is lost; may be typed with its unit, which is then taken out
     * @param unit of the value and of the limits; may be left out if the value names it
     * @param point where it was measured
     * @param instrument what it was measured with; empty if not told
     * @param lower lowest value that conforms, inclusive; null if there is none
     * @param upper highest value that conforms, inclusive; null if there is none
     * @param limitSource where the limit comes from; empty without limits
     * @param accuracy how well the instrument shows it, see {@link Accuracy#parse}; null if not told
     * @param guard guard band of the verdict, in standard uncertainties, as policy had it then; null without accuracy
     * @param finding id of the catalogue's finding that this reading answers; null if none
     */
    record ReadingRecorded(
            String quantity,
            String value,
            String unit,
            String point,
            String instrument,
            @Nullable String lower,
            @Nullable String upper,
            String limitSource,
            @Nullable String accuracy,
            @Nullable String guard,
            @Nullable String finding)
            implements Evidence {
        public ReadingRecorded {
            Texts t = new Texts();
            quantity = t.required("quantity", quantity, Texts.LINE, "Say what was measured.");
            t.require(value != null && !value.isBlank(), "value", "Give the measured value.");
            MeasuredText typed = MeasuredText.of(t, value, unit);
            value = typed.value();
            unit = t.required("unit", typed.unit(), 40, "Give the unit; for a plain count write 'count'.");
            point = t.required("point", point, Texts.LINE, "Say where it was measured.");
            instrument = t.optional("instrument", instrument, Texts.LINE);
            lower = MeasuredText.decimal(t, "lower", lower, unit);
            upper = MeasuredText.decimal(t, "upper", upper, unit);
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
            accuracy = t.orNull("accuracy", accuracy, Texts.LINE);
            guard = accuracy == null ? null : Objects.requireNonNullElse(t.orNull("guard", guard, 10), "2");
            finding = t.orNull("finding", finding, 80);
            t.done();
            if (accuracy != null) {
                ReadingCheck.of(value, unit, accuracy).require(lower, upper, guard);
            }
        }

        /** A reading of whose instrument nothing is known. */
        public ReadingRecorded(
                String quantity,
                String value,
                String unit,
                String point,
                String instrument,
                @Nullable String lower,
                @Nullable String upper,
                String limitSource) {
            this(quantity, value, unit, point, instrument, lower, upper, limitSource, null, null, null);
        }

        /** With the guard band that policy asks for. */
        public ReadingRecorded guarded(String multiple) {
            return new ReadingRecorded(
                    quantity, value, unit, point, instrument, lower, upper, limitSource, accuracy, multiple, finding);
        }

        /** By the guard band if the accuracy is known, else by plain comparison; limits inclusive. */
        public Verdict verdict() {
            if (lower == null && upper == null) {
                return Verdict.NOT_JUDGED;
            }
            return judgement()
                    .map(j -> switch (j.verdict()) {
                        case WITHIN -> Verdict.WITHIN;
                        case OUTSIDE -> Verdict.OUTSIDE;
                        case TOO_CLOSE_TO_CALL -> Verdict.TOO_CLOSE;
                    })
                    .orElseGet(this::plainly);
        }

        private Verdict plainly() {
            BigDecimal measured = new BigDecimal(value);
            boolean above = upper != null && measured.compareTo(new BigDecimal(upper)) > 0;
            boolean below = lower != null && measured.compareTo(new BigDecimal(lower)) < 0;
            return above || below ? Verdict.OUTSIDE : Verdict.WITHIN;
        }

        /** The verdict with its uncertainty and probability; empty if limit or accuracy is not known. */
        public Optional<Judgement> judgement() {
            return accuracy == null || (lower == null && upper == null)
                    ? Optional.empty()
                    : Optional.of(ReadingCheck.of(value, unit, accuracy).judge(lower, upper, guard));
        }

        /** Standard uncertainty in the reading's unit; empty if the accuracy is not known. */
        public OptionalDouble standardUncertainty() {
            return accuracy == null
                    ? OptionalDouble.empty()
                    : ReadingCheck.of(value, unit, accuracy).standardUncertainty();
        }

        /** Whether the other reading is of the same quantity at the same point, whatever the letter case. */
        public boolean samePlace(ReadingRecorded other) {
            return quantity.equalsIgnoreCase(other.quantity) && point.equalsIgnoreCase(other.point);
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
