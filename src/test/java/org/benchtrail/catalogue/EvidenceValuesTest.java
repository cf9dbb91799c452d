package org.benchtrail.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.advice.Diagnosis;
import org.benchtrail.core.advice.KindWords;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.advice.SheetReader;
import org.benchtrail.core.advice.Suggestions;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.Discrimination;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What sheets make of the catalogue of 162 causes and of the one before it, against numbers that were computed apart from this
 * program.
 */
class EvidenceValuesTest {
    private static final Instant START = Instant.parse("2031-03-03T08:00:00Z");
    private static final double DIGITS = 6e-7;
    private static final double FOUR_DIGITS = 6e-5;
    private static final Catalogue MERGED = read("/diagnosis/catalogue-2.yaml");
    private static final Catalogue OLD = read("/diagnosis/catalogue-1.yaml");

    private static Catalogue read(String resource) {
        try (InputStream in = EvidenceValuesTest.class.getResourceAsStream(resource)) {
            return CatalogueFile.read(new String(in.readAllBytes(), StandardCharsets.UTF_8))
                    .catalogue()
                    .orElseThrow();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Model model(Catalogue catalogue, Category category) {
        return new Model(catalogue.category(category.catalogue()).orElseThrow(), ModelSettings.STANDARD);
    }

    private static JobSheet sheet(Category category, Fact... facts) {
        List<Entry> trail = new ArrayList<>();
        add(
                trail,
                new Opened(
                        "40718-6",
                        "It fails",
                        "",
                        category,
                        "Device",
                        "Office",
                        1,
                        Priority.Impact.ONE_PERSON,
                        Priority.Urgency.STOPPED,
                        "ines",
                        Set.of(Role.TECHNICIAN)));
        for (Fact fact : facts) {
            add(trail, fact);
        }
        return JobSheet.replay(trail);
    }

    private static void add(List<Entry> trail, Fact fact) {
        int entry = trail.size() + 1;
        trail.add(new Entry(new Stamp(entry, START.plusSeconds(60L * entry), "ines", Set.of(Role.TECHNICIAN)), fact));
    }

    private static FindingAnswered said(String finding, String value, Source source) {
        return new FindingAnswered(finding, "as the catalogue has it", value, source);
    }

    private static FindingAnswered seen(String finding, String value) {
        return said(finding, value, Source.SEEN);
    }

    private static ChangesAsked changed(ChangeAnswer others, ChangeKind... yes) {
        Map<ChangeKind, ChangeAnswer> answers = new EnumMap<>(ChangeKind.class);
        for (ChangeKind kind : ChangeKind.values()) {
            answers.put(kind, List.of(yes).contains(kind) ? ChangeAnswer.YES : others);
        }
        return new ChangesAsked(answers, yes.length == 0 ? "" : "as told");
    }

    private static BenchResultAttached attached(String calculation, Result.Level level, String verdict) {
        return new BenchResultAttached(calculation, 1, calculation, "{}", level, verdict, "as computed", List.of());
    }

    /** A site with that mains voltage, whose bench works out that one figure. */
    private static SheetReader site(@Nullable String mains, Result.Figure... figures) {
        return new SheetReader() {
            @Override
            public Optional<String> mains(JobSheet sheet) {
                return Optional.ofNullable(mains);
            }

            @Override
            public Optional<Worked> again(BenchResultAttached attached) {
                record Nothing() {}
                Result.Judgement none = new Result.Judgement(Result.Level.NONE, "", "");
                return figures.length == 0
                        ? Optional.empty()
                        : Optional.of(new Worked(
                                new Nothing(),
                                new Result(
                                        none,
                                        List.of(figures),
                                        List.of(),
                                        List.of(),
                                        List.of(),
                                        List.of(),
                                        List.of())));
            }
        };
    }

    private static void expect(
            Catalogue catalogue, SheetReader reader, JobSheet sheet, double tolerance, String... pairs) {
        Model model = model(catalogue, sheet.opened().category());
        Ranking ranking = Ranking.of(model, SheetEvidence.of(sheet, model, reader));
        for (String pair : pairs) {
            String[] p = pair.split(" ");
            assertEquals(Double.parseDouble(p[1]), ranking.probability(p[0]), tolerance, p[0] + " in " + ranking.all());
        }
    }

    private static void expect(JobSheet sheet, String... pairs) {
        expect(MERGED, SheetReader.PLAIN, sheet, DIGITS, pairs);
    }

    // ---- recorded facts by themselves

    @Test
    void memoryAdded_isHeardOnce_howeverItIsTold() {
        ChangesAsked hardware = changed(ChangeAnswer.UNKNOWN, ChangeKind.HARDWARE);
        expect(sheet(Category.MEMORY), "MEM-06 .057328", "MEM-07 .040948", "MEM-02 .180172");
        expect(sheet(Category.MEMORY, hardware), "MEM-06 .139768", "MEM-07 .120372", "MEM-02 .213360");
        expect(
                sheet(Category.MEMORY, hardware, said("m10", "yes", Source.REPORTED)),
                "MEM-06 .143548",
                "MEM-07 .129877",
                "MEM-02 .205068");
        expect(
                sheet(Category.MEMORY, hardware, attached("module-fit", Result.Level.BAD, "does not fit")),
                "MEM-07 .463637",
                "MEM-06 .223529");
    }

    @Test
    void feedingPowerExceeded_isHeardFromTheBench() {
        BenchResultAttached budget = attached("poe-budget", Result.Level.BAD, "budget exceeded");
        SheetReader worked = site(null, new Result.Figure("Share of the budget", 108, "%", 4));
        expect(sheet(Category.WIRED), "LAN-11 .028358");
        expect(MERGED, worked, sheet(Category.WIRED, budget), DIGITS, "LAN-11 .261471");
        expect(
                MERGED,
                worked,
                sheet(Category.WIRED, budget, changed(ChangeAnswer.UNKNOWN, ChangeKind.HARDWARE)),
                DIGITS,
                "LAN-11 .453527");
    }

    @Test
    void answers_beforeAndAfterThePatch() {
        JobSheet clicks = sheet(Category.STORAGE, seen("s5", "yes"), seen("s6", "yes"));
        expect(OLD, SheetReader.PLAIN, clicks, DIGITS, "UNLISTED .282445", "STO-01 .254031");
        expect(clicks, "STO-12 .516156", "STO-01 .148890", "UNLISTED .131421");
        expect(sheet(Category.BOOT, seen("o1", "yes"), seen("o2", "yes"), seen("o17", "yes")), "BOO-06 .853961");
        JobSheet alone = sheet(Category.WIRED, seen("n1", "no"), seen("n3", "yes"), seen("n6", "no"));
        expect(OLD, SheetReader.PLAIN, alone, DIGITS, "LAN-04 .296654", "LAN-03 .181681", "LAN-10 .130762");
        expect(alone, "LAN-10 .173921", "LAN-03 .158693", "LAN-15 .108342", "LAN-16 .092129", "LAN-04 .080899");
        expect(sheet(Category.WIRED, seen("n1", "no"), seen("n3", "yes"), seen("n6", "yes")), "LAN-04 .690730");
    }

    /** Only one was reported: it is presumed that the neighbours are good, and the question stays. */
    @Test
    void scopeOfOne_isPresumed() {
        JobSheet one = sheet(Category.WIRED, seen("n1", "no"), seen("n3", "yes"), new ScopeRecorded(Scope.ONE, ""));
        expect(one, "LAN-04 .166737", "LAN-10 .152454");
        Report presumed = SheetEvidence.answers(SheetEvidence.of(one, model(MERGED, Category.WIRED)))
                .get("n6");
        assertEquals(new Report("entry-4/n6", "n6", "no", 0.6, START.plusSeconds(240), false, true), presumed);
        assertTrue(
                Diagnosis.of(one, model(MERGED, Category.WIRED)).advice().actions().stream()
                        .anyMatch(a -> a.id().equals("n6")),
                "nobody looked at a neighbour yet");
    }

    @Test
    void changesAsked_moveTheDemos() {
        JobSheet clock = sheet(Category.HEAT, seen("h1", "above"), seen("h11", "above"), seen("h12", "yes"));
        expect(MERGED, SheetReader.PLAIN, clock, FOUR_DIGITS, "HEA-07 .8376");
        JobSheet set = sheet(
                Category.HEAT,
                seen("h1", "above"),
                seen("h11", "above"),
                seen("h12", "yes"),
                changed(ChangeAnswer.NO, ChangeKind.SETTINGS));
        expect(MERGED, SheetReader.PLAIN, set, FOUR_DIGITS, "HEA-07 .9526");
        expect(
                MERGED,
                SheetReader.PLAIN,
                sheet(Category.ARRAY, new FindingRecorded("Member 3 failed", true), changed(ChangeAnswer.NO)),
                FOUR_DIGITS,
                "ARR-01 .6644");
    }

    // ---- limits by the mains

    private static ReadingRecorded volts(String volts) {
        return new ReadingRecorded("outlet voltage", volts, "V", "wall", "plug-in meter", null, null, "");
    }

    @Test
    void outletVoltage_isJudgedByTheSitesMains() {
        SheetReader europe = site("230");
        expect(MERGED, europe, sheet(Category.POWER), FOUR_DIGITS, "POW-13 .0210");
        expect(MERGED, europe, sheet(Category.POWER, volts("262")), FOUR_DIGITS, "POW-13 .1733");
        expect(MERGED, europe, sheet(Category.POWER, volts("262"), seen("p17", "yes")), FOUR_DIGITS, "POW-13 .5084");
        expect(MERGED, europe, sheet(Category.POWER, volts("201")), FOUR_DIGITS, "POW-01 .6825", "POW-13 .0461");
    }

    /** The format before took 262 V for inside, since its finding had no name for that side. */
    @Test
    void oldCatalogue_ranksAsItDid() {
        ReadingRecorded high =
                new ReadingRecorded("outlet voltage", "262", "V", "wall", "meter", null, null, "", null, null, "p3");
        expect(OLD, site("230"), sheet(Category.POWER), FOUR_DIGITS, "POW-13 .0238");
        expect(OLD, site("230"), sheet(Category.POWER, high), FOUR_DIGITS, "POW-13 .0137");
    }

    @ParameterizedTest
    @CsvSource({
        "230, 253, inside",
        "230, 253.1, above",
        "230, 207, inside",
        "230, 206.9, below",
        "120, 126, inside",
        "120, 126.1, above",
        "120, 108, inside",
        "120, 107.9, below",
        "120, 120, inside",
        "100, 107.0, inside",
        "100, 107.1, above",
        "100, 94.9, below",
        "100, 100, inside",
        "230, 120, below",
        "120, 230, above",
        ", 230, "
    })
    void limits_areThoseOfTheSitesMains(@Nullable String mains, String volts, @Nullable String expected) {
        JobSheet sheet = sheet(Category.POWER, volts(volts));
        Model model = model(MERGED, Category.POWER);
        List<String> values = SheetEvidence.of(sheet, model, site(mains)).reports().stream()
                .map(Report::value)
                .toList();
        assertEquals(expected == null ? List.of() : List.of(expected), values);
        assertEquals(
                expected == null ? Map.of(2, "say first which mains voltage the place has") : Map.of(),
                SheetEvidence.unheard(sheet, model.category(), site(mains)));
    }

    @Test
    void explicitAnswer_dropsWhatFollowed_butUnknownDropsNothing() {
        Model model = model(MERGED, Category.POWER);
        JobSheet both = sheet(Category.POWER, said("p3", "inside", Source.REPORTED), volts("262"));
        assertEquals(
                List.of("entry-2"),
                SheetEvidence.of(both, model, site("230")).reports().stream()
                        .map(Report::id)
                        .toList());
        JobSheet unknown = sheet(Category.POWER, seen("p3", "unknown"), volts("262"));
        assertEquals(
                List.of("entry-2", "entry-3/p3"),
                SheetEvidence.of(unknown, model, site("230")).reports().stream()
                        .map(Report::id)
                        .toList());
    }

    // ---- words

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "STORAGE | It clicks and the firmware says: no drive found | s5 yes, s6 yes",
                "POWER | no burnt smell | ",
                "WIRELESS | Connected but no internet, everybody | w15 yes, w2 no",
                "MEMORY | hardware changed: memory added | m10 yes",
                "BATTERY | It does not charge | b5 yes",
                "WIRED | port 4: loop detected, blocking | n17 yes",
                "HEAT | it was tuned last week | h12 ask"
            })
    void words_suggest_andNeverWeigh(Category category, String words, @Nullable String expected) {
        JobSheet sheet = sheet(category, new ExtractRecorded("log", words));
        Model model = model(MERGED, category);
        Diagnosis diagnosis = Diagnosis.of(sheet, model);
        assertTrue(diagnosis.evidence().isEmpty());
        assertEquals(
                expected == null ? Set.of() : Set.of(expected.split(", ")),
                Set.copyOf(Suggestions.of(sheet, diagnosis).stream()
                        .map(s -> s.finding() + " " + s.value())
                        .toList()));
    }

    @Test
    void suggestion_endsWithTheAnswer() {
        JobSheet asked =
                sheet(Category.STORAGE, new SymptomRecorded("It clicks", "clicking heard", false), seen("s5", "no"));
        assertEquals(List.of(), Suggestions.of(asked, Diagnosis.of(asked, model(MERGED, Category.STORAGE))));
    }

    /** Two findings more of another kind are a hint; one is none. */
    @Test
    void wordsThatFitAnotherKindBetter_areAHint() {
        String dead = "It clicks, and the firmware says: no drive found";
        KindWords words = new KindWords(MERGED.categories());
        assertEquals(
                Optional.of("storage"), words.betterKind(sheet(Category.POWER, new ExtractRecorded("screen", dead))));
        assertEquals(Optional.empty(), words.betterKind(sheet(Category.STORAGE, new ExtractRecorded("screen", dead))));
        assertEquals(
                Optional.empty(), words.betterKind(sheet(Category.POWER, new ExtractRecorded("screen", "it clicks"))));
    }

    // ---- telling the theory from its rivals

    @Test
    void checksOfTheTheory_areThoseThatTellItFromItsRivals() {
        JobSheet sheet = sheet(
                Category.WIRED,
                seen("n1", "no"),
                seen("n3", "yes"),
                seen("n6", "no"),
                said("n22", "yes", Source.REPORTED));
        Model model = model(MERGED, Category.WIRED);
        Ranking ranking = Ranking.of(model, SheetEvidence.of(sheet, model));
        expect(
                MERGED,
                SheetReader.PLAIN,
                sheet,
                FOUR_DIGITS,
                "LAN-10 .2900",
                "LAN-15 .1662",
                "LAN-03 .1037",
                "UNLISTED .0719",
                "LAN-01 .0675",
                "LAN-16 .0602");
        Discrimination d = new Discrimination(ranking, "LAN-10", Source.SEEN.reliability());
        List<Discrimination.Offer> offers = d.offers(PlanSettings.STANDARD, BenchSituation.PLAIN);
        assertEquals("n13", offers.get(0).finding());
        assertEquals(5, offers.get(0).minutes());
        holds(d.of("n13", 5), "yes", .918, 10.245982, -10.467782, 8.547454, 8.670967, 8.635146);
        holds(d.of("n17", 4), "no", .956, -7.973287, 1.206707, .802787, 1.326227, 1.174420);
        Discrimination.Offer outlet = d.of("n9", 6);
        assertEquals(1.180275, outlet.expected(), DIGITS);
        assertEquals(.453016, d.of("n21", 1).expected(), DIGITS);
        assertTrue(offers.stream().noneMatch(o -> o.finding().equals("n21")), "it tells too little");
        assertEquals("LAN-15", Discrimination.favoured(ranking, "n17"));
        assertEquals(Discrimination.Bearing.SUPPORTS, d.of("n13", 5).bearing("yes"));
        assertEquals(Discrimination.Bearing.RULES_OUT, d.of("n13", 5).bearing("no"));
        assertEquals(Discrimination.Bearing.LEAVES_OPEN, d.of("n17", 4).bearing("no"));
        assertEquals(2.42, 10 * Math.log10(ranking.probability("LAN-10") / ranking.probability("LAN-15")), .006);
        assertEquals(4.47, 10 * Math.log10(ranking.probability("LAN-10") / ranking.probability("LAN-03")), .006);
    }

    private static void holds(
            Discrimination.Offer o, String sign, double chance, double yes, double no, double wa, double wr, double d) {
        assertEquals(sign, o.sign());
        assertEquals(chance, o.chance(), DIGITS);
        assertEquals(yes, o.weights().get("yes"), DIGITS);
        assertEquals(no, o.weights().get("no"), DIGITS);
        assertEquals(wa, o.ifRight(), DIGITS);
        assertEquals(wr, o.ifWrong(), DIGITS);
        assertEquals(d, o.expected(), DIGITS);
    }

    // ---- repairs, rethinking, checks of one's own

    @Test
    void rethinking_countsOnlyWhereTheTheoryWasWrong() {
        Fact[] open = {
            seen("s4", "yes"), seen("s6", "yes"), new TheoryStated("The cable", "STO-02"), new TheoryChosen(4, "", "")
        };
        expect(MERGED, SheetReader.PLAIN, sheet(Category.STORAGE, open), FOUR_DIGITS, "STO-02 .4303", "STO-08 .1291");
        JobSheet aside = sheet(Category.STORAGE, and(open, new Rethought("The window was missed", false)));
        expect(MERGED, SheetReader.PLAIN, aside, FOUR_DIGITS, "STO-02 .4303", "STO-08 .1291");
        JobSheet new1 = sheet(Category.STORAGE, and(open, new VerifyFailed("Now the lamp is dark", false)));
        expect(MERGED, SheetReader.PLAIN, new1, FOUR_DIGITS, "STO-02 .4303");
        JobSheet wrong = sheet(Category.STORAGE, and(open, new Rethought("Not the cable", true)));
        expect(MERGED, SheetReader.PLAIN, wrong, FOUR_DIGITS, "STO-08 .2184");
        JobSheet still = sheet(Category.STORAGE, and(open, new VerifyFailed("Still there")));
        expect(MERGED, SheetReader.PLAIN, still, FOUR_DIGITS, "STO-08 .2184");
    }

    private static Fact[] and(Fact[] facts, Fact... more) {
        List<Fact> all = new ArrayList<>(List.of(facts));
        all.addAll(List.of(more));
        return all.toArray(Fact[]::new);
    }

    private static Fact[] ownCheck(CheckOutcome outcome, Fact... after) {
        return and(
                new Fact[] {
                    new TheoryStated("The cable", "STO-02"),
                    new TheoryChosen(2, "", ""),
                    new CheckPlanned(2, "Bend the cable", "the fault shows", false, Set.of()),
                    new ResultRecorded(4, "as written", outcome, null)
                },
                after);
    }

    private static double odds(Fact... facts) {
        Diagnosis d = Diagnosis.of(sheet(Category.STORAGE, facts), model(MERGED, Category.STORAGE));
        return 10 * Math.log10(d.ranking().probability("STO-02") / d.ranking().probability("STO-03"));
    }

    @Test
    void checkOfOnesOwn_weighsForItsCause() {
        double before = odds();
        assertEquals(6.96, odds(ownCheck(CheckOutcome.SUPPORTS)) - before, .006);
        assertEquals(-6.96, odds(ownCheck(CheckOutcome.REFUTES)) - before, .006);
        assertEquals(0, odds(ownCheck(CheckOutcome.INCONCLUSIVE)) - before, 1e-9);
        assertEquals(-13.0103, odds(ownCheck(CheckOutcome.REFUTES, new RuledOut())) - before, 1e-4);
    }

    @Test
    void checkOfOnesOwn_onAReading_weighsMore() {
        ReadingRecorded reading = new ReadingRecorded("resistance", "8", "ohm", "cable", "meter", null, null, "");
        ReadingRecorded exact =
                new ReadingRecorded("resistance", "8", "ohm", "cable", "meter", null, null, "", "1 %", null, null);
        assertEquals(8.65, measured(reading) - odds(), .006);
        assertEquals(9.17, measured(exact) - odds(), .006);
    }

    private static double measured(ReadingRecorded reading) {
        return odds(
                new TheoryStated("The cable", "STO-02"),
                new TheoryChosen(2, "", ""),
                new CheckPlanned(2, "Measure the cable", "too high", false, Set.of()),
                reading,
                new ResultRecorded(4, "as written", CheckOutcome.SUPPORTS, 5));
    }
}
