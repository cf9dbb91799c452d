package org.benchtrail.trail;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.AddendumCountersigned;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.AskKind;
import org.benchtrail.core.method.desk.Asked;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.ForecastCommitted;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.method.desk.ForecastSkipped;
import org.benchtrail.core.method.desk.HandOverOffered;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.OfferWithdrawn;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.PresenceEnded;
import org.benchtrail.core.method.desk.PresenceSigned;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Resumed;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.Returned;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.desk.WorkMark;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.BenchFigure;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.EvidenceImpossible;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.LossAccepted;
import org.benchtrail.core.method.identify.MarkKind;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.PictureMarked;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.MakerConsulted;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ExpectedValue;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.Inspection;
import org.benchtrail.core.method.theorize.Obvious;
import org.benchtrail.core.method.theorize.ObviousQuestioned;
import org.benchtrail.core.method.theorize.RankedCause;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.ItemState;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.method.verify.RequesterState;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SoakStarted;
import org.benchtrail.core.method.verify.SymptomRechecked;

/** At least one fact of every kind, with every component filled; beyond ASCII, too. */
public final class Samples {
    static final Opened OPENED = new Opened(
            "40718-6",
            "Switches off after ten minutes",
            "It just dies \u2013 \"again\"",
            Category.HEAT,
            "Workstation by the window",
            "Drawing office, 2\u00bd floor",
            17,
            Priority.Impact.ONE_PERSON,
            Priority.Urgency.HINDERED,
            "ines",
            Set.of(Role.MENTOR, Role.TECHNICIAN));

    private static final ReadingRecorded READING =
            new ReadingRecorded("temperature", "96.5", "Cel", "processor", "sensor 3", "5", "85", "nameplate");

    private Samples() {}

    /** What came, or grew, after format 1 was first written. */
    private static List<Fact> later() {
        return List.of(
                new ReadingRecorded(
                        "+12 V rail",
                        "11.38",
                        "V",
                        "drive plug",
                        "meter 4",
                        "11.4",
                        "12.6",
                        "design guide",
                        "0.5 % + 2",
                        "2",
                        "p4"),
                new FindingAnswered("h1", "Do the fans turn?", "no", Source.SEEN, 2),
                new BenchResultAttached(
                        "soak",
                        1,
                        "Soak time",
                        "{\"every\":24.0}",
                        Result.Level.NONE,
                        "soak time",
                        "It must run clean for 71.9 h.",
                        List.of(new BenchFigure("Time to run clean", "71.9", "h"))),
                new AttachmentAdded(
                        "port.jpg",
                        "image/jpeg",
                        90_000,
                        "1e".repeat(32),
                        "The port",
                        Instant.parse("2031-03-02T17:30:00.125Z"),
                        "4032 x 3024"),
                new PictureMarked(9, MarkKind.ARROW, 0, 250, 500, 1000, "This <fan> \ud83d\udd25"),
                new SoakTimeReckoned(4314, "Soak time, entry 4"),
                new TheoriesRanked(
                        List.of(18),
                        "Catalogue version 3",
                        List.of(new RankedCause("H01", "Dust in the cooler", "0.6123")),
                        3,
                        "h4",
                        "H01"),
                new VerifyFailed("Only the lamp is dark now", false),
                new CheckPlanned(
                        18,
                        "Look at the fans",
                        "They stand",
                        false,
                        Set.of(),
                        "h1",
                        new ExpectedValue("0", "10", "r/min")),
                new ResultRecorded(22, "They stand", CheckOutcome.SUPPORTS, 16, "no", "The sensor is off"),
                new ActionPlanned(
                        "Format the card",
                        "It can be read",
                        "Nobody",
                        "The copy",
                        false,
                        true,
                        false,
                        false,
                        "1",
                        "Card",
                        Set.of(Caution.STATIC),
                        true,
                        "There is a copy"),
                new PartFitChecked(23, Fit.FITS, "Drive fit", 24),
                new FunctionChecked(
                        Map.of(), "Fine", Map.of(Category.HEAT.functions().get(0), ItemState.WORKS)),
                new LossAccepted("Rae Example", "Told on the telephone"),
                new SoakStarted("Under full load"),
                new HandOverOffered("ole", "Please"),
                new OfferWithdrawn("No time"),
                new LesseningAgreed(33, "It was of another ticket"),
                new Asked(AskKind.WAIVER, "reproduced", "No second device"),
                new Remarked(12, "data-protected", "Where is the copy?", WorkMark.NOT_SATISFIED),
                new SentBack("Say what was measured"),
                new ForecastCommitted(ForecastKind.FINDING, 12, 2, "ab".repeat(32), "h3"),
                new ForecastSkipped(ForecastKind.CAUSES_EARLY, "tom", "Urgent"),
                new PresenceSigned(23, "tom"),
                new PresenceEnded(61, true, "Cord pulled first"),
                new Addendum(Addendum.About.CAUSE, "The fan was worn as well", "cause-named"),
                new AddendumCountersigned(60, "Seen"),
                new KnowledgeLinked(Lesson.CONFIRMED, "Dust in the cooler", 12L));
    }

    /** In an order in which a chain can hold them: the opening first. */
    public static List<Fact> all() {
        List<Fact> all = new ArrayList<>(List.of(OPENED));
        all.addAll(later());
        all.addAll(stored().subList(1, stored().size()));
        return all;
    }

    /** One of each kind as the first version of the server wrote them, in the order of {@code entries-format-1.txt}. */
    static List<Fact> stored() {
        return List.of(
                OPENED,
                new SymptomRecorded("It dies\non me \ud83d\udd25", "Screen goes dark", true),
                new OnsetRecorded(true, "Last Tuesday"),
                new ChangesAsked(each(ChangeKind.class, ChangeAnswer.YES), "New desk"),
                new ScopeRecorded(Scope.SEVERAL, "Both by the window"),
                new ReproductionTried(Reproduction.INTERMITTENT, "Full load"),
                new HazardsScreened(Stream.of(Hazard.values())
                        .filter(hazard -> hazard.compareTo(Hazard.EXPOSED_WIRING) <= 0)
                        .collect(Collectors.toMap(Function.identity(), hazard -> true))),
                new StopWorkCleared("Unplugged and aired", true),
                new DataAnswered(DataState.IMPOSSIBLE, "The disk is encrypted"),
                new ExtractRecorded("system log", "line 1\n\tline 2"),
                new AttachmentAdded("fan.png", "image/png", 4096, "0f".repeat(32), "Dust"),
                new EvidenceImpossible("Gone to the supplier"),
                new LogsReviewed(true, "Nothing"),
                new LikenessChecked(List.of("40719-4", "40720-2")),
                new FindingRecorded("Reallocated sectors grow", true),
                READING,
                new ObviousQuestioned(each(Obvious.class, Inspection.SUSPECT), "Loose"),
                new TheoryStated("Cooler clogged", "heat.dust"),
                new TheoriesRanked(List.of(18, 17), "Frequency"),
                new TheoryChosen(18, "Quick to test", "New log"),
                new CheckPlanned(18, "Open the cover", "Dust", true, Set.of(Caution.STATIC, Caution.MAINS)),
                new ResultRecorded(21, "A felt of dust", CheckOutcome.SUPPORTS, 16),
                new ActionPlanned(
                        "Clean it",
                        "Runs cool",
                        "One person, an hour",
                        "Put it back",
                        true,
                        true,
                        true,
                        true,
                        "84.50",
                        "Cooler 92 mm",
                        EnumSet.complementOf(EnumSet.of(Caution.LIVE, Caution.HEIGHT)),
                        null,
                        null),
                new MakerConsulted(true, "Manual, chapter 4"),
                new PartFitChecked(23, Fit.FITS_WITH_WARNING, "Socket"),
                new PartOverrideApproved(23, "Only for tonight"),
                new PlanApproved(List.of(23), "Go"),
                new PlanDeclined("Too dear"),
                new ActionSettled(23, Settlement.CARRIED_OUT, "As planned"),
                new SymptomRechecked(2, true, "Two hours at full load"),
                new FunctionChecked(Map.of(0, ItemState.WORKS, 1, ItemState.NOT_APPLICABLE), "Fine", null),
                new RequesterAnswered(RequesterState.NOT_REACHED, 3, "Mailbox"),
                new PreventionConsidered(true, "Clean it twice a year"),
                new SoakRun(2880, true, "Once at night"),
                new CauseNamed("Clogged cooler", "heat.dust", Sureness.BY_REPAIR),
                new SummaryWritten("Dust", "Cleaned", "Runs cool"),
                new Signed(Signatory.MENTOR),
                new KnowledgeLinked(Lesson.CONFIRMED, "heat.dust"),
                new EffortRecorded(45, "Paste"),
                new CautionsAcknowledged(23, Set.of(Caution.HEAT)),
                new Waived("reproduced", "No second device"),
                new Corrected(16, "Typing error", READING),
                new Corrected(2, "Wrong ticket", null),
                new Refused("advanced", List.of("onset-known", "scope-known")),
                new Advanced(),
                new RuledOut(),
                new Rethought("Fan turns", true),
                new VerifyFailed("Still dies"),
                new Closed(),
                new Reopened("Back again"),
                new Held(WaitingFor.PART, Instant.parse("2031-03-05T08:00:00.000001Z"), "Fan ordered"),
                new Resumed(),
                new HandedOver("tom", Set.of(Role.TRAINEE), "Please"),
                new Escalated("Cooler supplier", "Cleaning"),
                new Returned("A new cooler"),
                new Cancelled("Same trouble", "40719-4"));
    }

    private static <K extends Enum<K>, V> Map<K, V> each(Class<K> keys, V value) {
        return Arrays.stream(keys.getEnumConstants()).collect(Collectors.toMap(Function.identity(), key -> value));
    }
}
