package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.bench.Numeral.of;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Choice;
import org.benchtrail.core.bench.Citation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Trade;
import org.benchtrail.core.bench.storage.AtaAttributes.Attribute;
import org.jspecify.annotations.Nullable;

/**
 * What a drive says about itself: failing, suspicious, or no alarm; never more than that.
 *
 * <p>Sources: threshold semantics of SFF-8035i r2 and ATA/ATAPI-5 SMART RETURN STATUS (clauses from memory); for the attributes
 * watched by their raw count the studies named below; NVM Express log page 02h. Attribute 199 counts errors on the way between
 * drive and controller: it points at the cable.
 */
public final class DriveHealth {
    /** In what form the drive's answer is given. */
    public enum Form implements Choice {
        ATA_ROWS("ATA attributes as rows"),
        ATA_SECTOR("ATA data sector, hexadecimal"),
        NVME_PAGE("NVMe health log page, hexadecimal");

        private final String words;

        Form(String words) {
            this.words = words;
        }

        @Override
        public String words() {
            return words;
        }
    }

    /** An earlier reading of the watched attribute. */
    public record Sample(
            @Ask(label = "Days ago", unit = "d", hint = "Days before the table given above")
            double daysAgo,

            @Ask(label = "Value then", unit = "1", hint = "Normalised value; percentage used for NVMe")
            double value) {}

    public record Input(
            @Ask(label = "Form of the drive's answer") Form form,

            @Ask(
                    label = "Attributes or log page",
                    hint = "Lines of: id value worst threshold raw; or 512 bytes as hexadecimal pairs",
                    lines = 8)
            String table,

            @Ask(
                    label = "Threshold sector",
                    hint = "512 bytes as hexadecimal pairs; empty for rows and NVMe",
                    lines = 4)
            String thresholds,

            @Ask(label = "Attribute to follow", hint = "Its id; for NVMe percentage used is followed")
            int followed,

            @Ask(label = "Earlier readings", hint = "May be empty: then there is no trend")
            List<Sample> earlier,

            @Ask(
                    label = "Critical temperature",
                    unit = "°C",
                    hint = "NVMe: from the drive's identify data or data sheet; empty for 85")
            @Nullable
            Double critical) {
        private static final int LONGEST = 20_000;

        /** With the usual critical temperature. */
        public Input(Form form, String table, String thresholds, int followed, List<Sample> earlier) {
            this(form, table, thresholds, followed, earlier, null);
        }

        public Input {
            InputCheck check = new InputCheck();
            check.present("form", form);
            check.text("table", table, LONGEST);
            check.text("thresholds", thresholds, LONGEST);
            check.rule(followed >= 0 && followed <= 255, "followed", "give an attribute id from 0 to 255");
            earlier = check.list("earlier", earlier, 0, 1000, (path, sample) -> {
                check.within(path + ".daysAgo", sample.daysAgo(), 0.01, 36_500, "d");
                check.within(path + ".value", sample.value(), 0, 255, "1");
            });
            check.rule(
                    earlier.stream().mapToDouble(Sample::daysAgo).distinct().count() == earlier.size(),
                    "earlier",
                    "give each day once");
            check.optional("critical", critical, 0, 200, "°C");
            check.done();
        }
    }

    private static final String FLEET =
            "In 'Failure Trends in a Large Disk Drive Population' (USENIX FAST 2007) 56 % of the"
                    + " drives that failed had shown none of the four strong signals.";
    /** The attributes watched by their raw count, by id, with what is counted; in the order of their ids. */
    public static final Map<Integer, String> WATCHED = Collections.unmodifiableMap(new TreeMap<>(Map.of(
            5, "reallocated sectors",
            187, "reported uncorrectable errors",
            188, "command timeouts",
            197, "sectors pending reallocation",
            198, "uncorrectable sectors found off line")));

    private static final Citation THRESHOLD_SOURCE =
            Citation.fromMemory("SFF-8035i, Self-Monitoring, Analysis and Reporting Technology; ATA/ATAPI-5");
    private static final Citation COUNT_SOURCE = Citation.seen(
            "E. Pinheiro, W.-D. Weber, L. A. Barroso, Failure Trends in a Large Disk Drive Population, USENIX FAST"
                    + " 2007");
    private static final Citation LATER_SOURCE = Citation.fromMemory(
            "M. Botezatu and others, Predicting Disk Replacement towards Reliable Data Centers, KDD 2016");
    /** Attributes that the later study adds to those of the earlier one. */
    private static final Set<Integer> LATER = Set.of(187, 188);

    private static final int TIMEOUTS = 188;
    private static final int LINK_ERRORS = 199;
    /** Degrees Celsius; most makers state 80 to 90. */
    private static final double USUAL_CRITICAL = 85;

    private static final Citation LOG_SOURCE = Citation.seen("NVM Express Base Specification, log page 02h");

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "drive-health",
            2,
            Trade.STORAGE,
            "Drive health",
            "Does the drive say that it is failing, is it suspicious, or does it raise no alarm?",
            new Input(Form.ATA_ROWS, """
                5 96 96 10 3
                9 82 82 0 15890
                197 100 100 0 0
                198 100 100 0 0
                """, "", 5, List.of(new Sample(90, 100), new Sample(30, 98))),
            DriveHealth::calculate);

    private DriveHealth() {}

    public static Result calculate(Input input) {
        Assessment assessment = new Assessment();
        if (input.form() == Form.NVME_PAGE) {
            nvme(assessment, parseNvme(input), input);
        } else {
            ata(assessment, parseAta(input), input);
        }
        return assessment.result();
    }

    private static NvmeHealthLog parseNvme(Input input) {
        return reading("table", () -> NvmeHealthLog.parse(Sector.fromHex(input.table())));
    }

    private static AtaAttributes parseAta(Input input) {
        if (input.form() == Form.ATA_ROWS) {
            return reading("table", () -> AtaAttributes.parseRows(input.table()));
        }
        byte[] data = reading("table", () -> Sector.fromHex(input.table()));
        byte[] limits =
                input.thresholds().isBlank() ? null : reading("thresholds", () -> Sector.fromHex(input.thresholds()));
        return reading("table", () -> AtaAttributes.parse(data, limits));
    }

    /** Lets a problem carry the name of the input field; the place within it opens the sentence. */
    private static <T> T reading(String field, Supplier<T> parser) {
        try {
            return parser.get();
        } catch (Invalid e) {
            throw new Invalid(e.problems().stream()
                    .map(p -> p.field().startsWith("thresholds ")
                            ? placed("thresholds", p.field().substring("thresholds ".length()), p)
                            : placed(field, p.field(), p))
                    .toList());
        }
    }

    private static Invalid.Problem placed(String field, String place, Invalid.Problem problem) {
        return new Invalid.Problem(field, place + ": " + problem.sentence());
    }

    private static void ata(Assessment a, AtaAttributes table, Input input) {
        for (Attribute row : table.rows()) {
            threshold(a, row);
            count(a, row);
            link(a, row);
        }
        a.draft.figure(
                "Attributes watched by count",
                "number of rows with id 5, 187, 188, 197 or 198",
                of(watched(table)),
                watched(table),
                "1",
                3);
        if (watched(table) == 0) {
            a.draft.assume("None of the five attributes watched by their count is in the table.");
        }
        table.find(input.followed())
                .map(row -> new DriveTrend("attribute " + row.id(), row.value(), row.threshold(), -1))
                .ifPresent(trend -> trend.write(a.draft, input.earlier()));
    }

    private static long watched(AtaAttributes table) {
        return table.rows().stream()
                .filter(row -> WATCHED.containsKey(row.id()))
                .count();
    }

    private static void threshold(Assessment a, Attribute row) {
        String name = "attribute " + row.id() + " against its threshold";
        if (row.threshold() < 0) {
            a.unknownThresholds = true;
            return;
        }
        String compared = "value " + row.value() + ", worst " + row.worst() + ", threshold " + row.threshold();
        a.draft.say(
                name,
                "failing if threshold > 0 and value <= threshold",
                compared + (row.failing() ? ": failing" : ": above"));
        if (row.failing()) {
            String meaning = row.prefail() ? "failure is to be expected soon" : "the design life is used up";
            a.failing(name, compared + ": " + meaning + ".", THRESHOLD_SOURCE);
        } else if (row.failedBefore()) {
            a.suspicious(name, compared + ": it was at the threshold once and has come back.", THRESHOLD_SOURCE);
        } else {
            a.draft.rule(name, Level.GOOD, compared + ": no alarm.", THRESHOLD_SOURCE);
        }
    }

    private static void count(Assessment a, Attribute row) {
        String meaning = WATCHED.get(row.id());
        if (meaning == null) {
            return;
        }
        String name = "attribute " + row.id() + " by its count";
        long count = row.id() == TIMEOUTS ? unpacked(row.raw()) : row.raw();
        Citation source = LATER.contains(row.id()) ? LATER_SOURCE : COUNT_SOURCE;
        String said = count + " " + (count == 1 ? meaning.replaceFirst("s\\b", "") : meaning);
        if (count > 0) {
            a.suspicious(name, said + ": investigate.", source);
        } else {
            a.draft.rule(name, Level.GOOD, said + ": no alarm.", source);
        }
        if (row.id() == TIMEOUTS && row.raw() > LOW_WORD) {
            a.draft.assume("Attribute 188 holds three counters of 16 bits, " + words(row.raw())
                    + ": from memory, not checked; they are added up.");
        }
    }

    private static final long LOW_WORD = 0xFFFF;

    /** Three counters of 16 bits, as some drives pack them; a small value is one counter. */
    private static long unpacked(long raw) {
        return (raw & LOW_WORD) + ((raw >> 16) & LOW_WORD) + ((raw >> 32) & LOW_WORD);
    }

    private static String words(long raw) {
        return (raw & LOW_WORD) + ", " + ((raw >> 16) & LOW_WORD) + " and " + ((raw >> 32) & LOW_WORD);
    }

    /** Errors on the way to the drive: the cable, the plug or the controller, seldom the drive. */
    private static void link(Assessment a, Attribute row) {
        if (row.id() != LINK_ERRORS) {
            return;
        }
        String name = "attribute 199, errors on the link";
        if (row.raw() > 0) {
            a.elsewhere(
                    "check the cable",
                    name,
                    row.raw()
                            + " transfers had to be repeated: change or reseat the cable, then see whether the count"
                            + " grows.",
                    Citation.COMMON_PRACTICE);
        } else {
            a.draft.rule(name, Level.GOOD, "0 transfers had to be repeated.", Citation.COMMON_PRACTICE);
        }
    }

    private static void nvme(Assessment a, NvmeHealthLog log, Input input) {
        for (NvmeHealthLog.Warning warning : NvmeHealthLog.Warning.values()) {
            String name = "critical warning, bit " + warning.ordinal();
            if (log.warnings().contains(warning)) {
                a.failing(name, "Set: " + warning.sentence() + ".", LOG_SOURCE);
            } else {
                a.draft.rule(name, Level.GOOD, "Not set.", LOG_SOURCE);
            }
        }
        if (log.reservedWarningBits() != 0) {
            a.suspicious("critical warning, bits 6 and 7", "Set, and their meaning is not known here.", LOG_SOURCE);
        }
        heat(a, log, input);
        spare(a, log);
        used(a, log);
        errors(a, log);
        figures(a.draft, log);
        new DriveTrend("percentage used", log.percentageUsed(), 100, 1).write(a.draft, input.earlier());
    }

    private static void heat(Assessment a, NvmeHealthLog log, Input input) {
        Double given = input.critical();
        double critical = given == null ? USUAL_CRITICAL : given;
        String compared = "composite " + log.compositeCelsius() + " °C, critical from " + of(critical) + " °C on";
        Citation source =
                given == null ? Citation.COMMON_PRACTICE : Citation.given("the drive's identify data or data sheet");
        if (log.compositeCelsius() >= critical) {
            a.failing("composite temperature", compared + ": cool it before anything else.", source);
        } else {
            a.draft.rule("composite temperature", Level.GOOD, compared + ".", source);
        }
        minutes(a, log);
    }

    private static void minutes(Assessment a, NvmeHealthLog log) {
        long warning = log.warningTemperatureMinutes();
        String name = "time above the warning temperature";
        if (warning > 0) {
            a.elsewhere(
                    "check the cooling",
                    name,
                    warning + " min over the drive's life: see that air reaches it.",
                    LOG_SOURCE);
        } else {
            a.draft.rule(name, Level.GOOD, "0 min over the drive's life.", LOG_SOURCE);
        }
        long critical = log.criticalTemperatureMinutes();
        a.warnIf(
                critical > 0,
                "time above the critical temperature",
                critical + " min over the drive's life.",
                LOG_SOURCE);
    }

    private static void spare(Assessment a, NvmeHealthLog log) {
        String compared = "spare " + log.availableSpare() + " %, threshold " + log.spareThreshold() + " %";
        a.draft.say("Spare against its threshold", "warn if spare <= threshold", compared);
        a.warnIf(log.availableSpare() <= log.spareThreshold(), "available spare", compared + ".", LOG_SOURCE);
    }

    private static void used(Assessment a, NvmeHealthLog log) {
        String said = log.percentageUsed() + " % of the rated life used.";
        a.warnIf(log.percentageUsed() >= 100, "percentage used", said, LOG_SOURCE);
    }

    private static void errors(Assessment a, NvmeHealthLog log) {
        String said = log.mediaErrors() + " media and data integrity errors.";
        a.warnIf(log.mediaErrors().signum() > 0, "media errors", said, Citation.COMMON_PRACTICE);
    }

    private static void figures(ResultDraft draft, NvmeHealthLog log) {
        draft.figure(
                "Composite temperature",
                "t = T - 273",
                log.compositeKelvin() + " - 273",
                log.compositeCelsius(),
                "°C",
                3);
        draft.figure(
                "Written",
                "W = data units × 512000 / 10^12",
                log.dataUnitsWritten() + " × 512000 / 10^12",
                log.bytesWritten().doubleValue() / 1e12,
                "TB",
                4);
        draft.figure(
                "Powered on",
                "as read at bytes 128 to 143",
                log.powerOnHours().toString(),
                log.powerOnHours().doubleValue(),
                "h",
                7);
    }

    /** What has been found so far, the worst first. */
    private static final class Assessment {
        private final ResultDraft draft = new ResultDraft();
        private final List<String> alarms = new ArrayList<>();
        private final List<String> doubts = new ArrayList<>();
        private final List<String> besides = new ArrayList<>();
        private String words = "";
        private boolean unknownThresholds;

        /** As a sentence of its own. */
        private static String named(String name, String sentence) {
            return Character.toUpperCase(name.charAt(0)) + name.substring(1) + ": " + sentence;
        }

        void failing(String name, String sentence, Citation source) {
            alarms.add(named(name, sentence));
            draft.rule(name, Level.BAD, sentence, source);
        }

        void suspicious(String name, String sentence, Citation source) {
            doubts.add(named(name, sentence));
            draft.rule(name, Level.CAREFUL, sentence, source);
        }

        /** What points at something beside the drive. */
        void elsewhere(String where, String name, String sentence, Citation source) {
            words = where;
            besides.add(named(name, sentence));
            draft.rule(name, Level.CAREFUL, sentence, source);
        }

        void warnIf(boolean holds, String name, String sentence, Citation source) {
            if (holds) {
                suspicious(name, sentence, source);
            } else {
                draft.rule(name, Level.GOOD, sentence, source);
            }
        }

        Result result() {
            if (unknownThresholds) {
                draft.assume("Thresholds were not given for every attribute: those were judged by their count alone.");
            }
            draft.assume(FLEET);
            if (!alarms.isEmpty()) {
                draft.caution("DATA_LOSS");
                return draft.judged(Level.BAD, "failing", "Back up first. " + String.join(" ", alarms));
            }
            if (!doubts.isEmpty()) {
                draft.caution("DATA_LOSS");
                return draft.judged(Level.CAREFUL, "suspicious", "Back up first. " + String.join(" ", doubts));
            }
            if (!besides.isEmpty()) {
                return draft.judged(Level.CAREFUL, words, String.join(" ", besides));
            }
            return quiet();
        }

        private Result quiet() {
            if (draft.rules().isEmpty()) {
                return draft.judged(
                        Level.UNDECIDED,
                        "cannot be judged",
                        "No threshold and none of the watched attributes was given.");
            }
            long checked = draft.rules().size();
            return draft.judged(
                    Level.GOOD,
                    "no alarm",
                    String.format(
                            Locale.ROOT, "None of %d checks raised an alarm, which is no promise. %s", checked, FLEET));
        }
    }
}
