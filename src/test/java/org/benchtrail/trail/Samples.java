package org.benchtrail.trail;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.DeskFact;
import org.benchtrail.core.method.DocumentFact;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.IdentifyFact;
import org.benchtrail.core.method.MoveFact;
import org.benchtrail.core.method.PlanFact;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TestFact;
import org.benchtrail.core.method.TheorizeFact;
import org.benchtrail.core.method.VerifyFact;

/** At least one fact of every kind, with every component filled; beyond ASCII, too. */
public final class Samples {
    static final DeskFact.Opened OPENED = new DeskFact.Opened(
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

    private static final IdentifyFact.ReadingRecorded READING = new IdentifyFact.ReadingRecorded(
            "temperature", "96.5", "Cel", "processor", "sensor 3", "5", "85", "nameplate");

    private Samples() {}

    /** What came, or grew, after format 1 was first written. */
    private static List<Fact> later() {
        return List.of(
                new IdentifyFact.ReadingRecorded(
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
                new IdentifyFact.FindingAnswered("h1", "Do the fans turn?", "no", Source.SEEN),
                new IdentifyFact.BenchResultAttached(
                        "soak",
                        1,
                        "Soak time",
                        "{\"every\":24.0}",
                        Result.Level.NONE,
                        "soak time",
                        "It must run clean for 71.9 h.",
                        List.of(new IdentifyFact.Figure("Time to run clean", "71.9", "h"))),
                new IdentifyFact.SoakTimeReckoned(4314, "Soak time, entry 4"),
                new TheorizeFact.TheoriesRanked(
                        List.of(18),
                        "Catalogue version 3",
                        List.of(new TheorizeFact.RankedCause("H01", "Dust in the cooler", "0.6123")),
                        3),
                new TestFact.CheckPlanned(18, "Look at the fans", "They stand", false, Set.of(), "h1"),
                new TestFact.ResultRecorded(22, "They stand", TestFact.Outcome.SUPPORTS, 16, "no"),
                new DocumentFact.KnowledgeLinked(DocumentFact.Learned.CONFIRMED, "Dust in the cooler", 12L));
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
                new IdentifyFact.SymptomRecorded("It dies\non me \ud83d\udd25", "Screen goes dark", true),
                new IdentifyFact.OnsetRecorded(true, "Last Tuesday"),
                new IdentifyFact.ChangesAsked(each(IdentifyFact.Change.class, IdentifyFact.Answer.YES), "New desk"),
                new IdentifyFact.ScopeRecorded(IdentifyFact.Scope.SEVERAL, "Both by the window"),
                new IdentifyFact.ReproductionTried(IdentifyFact.Reproduction.INTERMITTENT, "Full load"),
                new IdentifyFact.HazardsScreened(each(IdentifyFact.Hazard.class, true)),
                new IdentifyFact.StopWorkCleared("Unplugged and aired", true),
                new IdentifyFact.DataAnswered(IdentifyFact.DataState.IMPOSSIBLE, "The disk is encrypted"),
                new IdentifyFact.ExtractRecorded("system log", "line 1\n\tline 2"),
                new IdentifyFact.AttachmentAdded("fan.png", "image/png", 4096, "0f".repeat(32), "Dust"),
                new IdentifyFact.EvidenceImpossible("Gone to the supplier"),
                new IdentifyFact.LogsReviewed(true, "Nothing"),
                new IdentifyFact.LikenessChecked(List.of("40719-4", "40720-2")),
                new IdentifyFact.FindingRecorded("Reallocated sectors grow", true),
                READING,
                new TheorizeFact.ObviousQuestioned(
                        each(TheorizeFact.Obvious.class, TheorizeFact.Look.SUSPECT), "Loose"),
                new TheorizeFact.TheoryStated("Cooler clogged", "heat.dust"),
                new TheorizeFact.TheoriesRanked(List.of(18, 17), "Frequency"),
                new TheorizeFact.TheoryChosen(18, "Quick to test", "New log"),
                new TestFact.CheckPlanned(18, "Open the cover", "Dust", true, Set.of(Caution.STATIC, Caution.MAINS)),
                new TestFact.ResultRecorded(21, "A felt of dust", TestFact.Outcome.SUPPORTS, 16),
                new PlanFact.ActionPlanned(
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
                        Set.of(Caution.values())),
                new PlanFact.MakerConsulted(true, "Manual, chapter 4"),
                new PlanFact.PartFitChecked(23, PlanFact.Fit.FITS_WITH_WARNING, "Socket"),
                new PlanFact.PartOverrideApproved(23, "Only for tonight"),
                new PlanFact.PlanApproved(List.of(23), "Go"),
                new PlanFact.PlanDeclined("Too dear"),
                new PlanFact.ActionSettled(23, PlanFact.Settlement.CARRIED_OUT, "As planned"),
                new VerifyFact.SymptomRechecked(2, true, "Two hours at full load"),
                new VerifyFact.FunctionChecked(
                        Map.of(0, VerifyFact.ItemState.WORKS, 1, VerifyFact.ItemState.NOT_APPLICABLE), "Fine"),
                new VerifyFact.RequesterAnswered(VerifyFact.RequesterState.NOT_REACHED, 3, "Mailbox"),
                new VerifyFact.PreventionConsidered(true, "Clean it twice a year"),
                new VerifyFact.SoakRun(2880, true, "Once at night"),
                new DocumentFact.CauseNamed("Clogged cooler", "heat.dust", DocumentFact.Sureness.BY_REPAIR),
                new DocumentFact.SummaryWritten("Dust", "Cleaned", "Runs cool"),
                new DocumentFact.Signed(DocumentFact.Signatory.MENTOR),
                new DocumentFact.KnowledgeLinked(DocumentFact.Learned.CONFIRMED, "heat.dust"),
                new DocumentFact.EffortRecorded(45, "Paste"),
                new DeskFact.CautionsAcknowledged(23, Set.of(Caution.HEAT)),
                new DeskFact.Waived("reproduced", "No second device"),
                new DeskFact.Corrected(16, "Typing error", READING),
                new DeskFact.Corrected(2, "Wrong ticket", null),
                new DeskFact.Refused("advanced", List.of("onset-known", "scope-known")),
                new MoveFact.Advanced(),
                new MoveFact.RuledOut(),
                new MoveFact.Rethought("Fan turns", true),
                new MoveFact.VerifyFailed("Still dies"),
                new MoveFact.Closed(),
                new MoveFact.Reopened("Back again"),
                new MoveFact.Held(
                        DeskFact.WaitingFor.PART, Instant.parse("2031-03-05T08:00:00.000001Z"), "Fan ordered"),
                new MoveFact.Resumed(),
                new MoveFact.HandedOver("tom", Set.of(Role.TRAINEE), "Please"),
                new MoveFact.Escalated("Cooler supplier", "Cleaning"),
                new MoveFact.Returned("A new cooler"),
                new MoveFact.Cancelled("Same trouble", "40719-4"));
    }

    private static <K extends Enum<K>, V> Map<K, V> each(Class<K> keys, V value) {
        return Arrays.stream(keys.getEnumConstants()).collect(Collectors.toMap(Function.identity(), key -> value));
    }
}
