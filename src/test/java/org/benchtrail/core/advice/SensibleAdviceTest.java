package org.benchtrail.core.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.catalogue.CatalogueFile;
import org.benchtrail.catalogue.CatalogueVersion;
import org.benchtrail.catalogue.PathsFile;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.diagnosis.path.Localiser;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is no longer advised with the delivered catalogue, because a good technician would shake the head. */
class SensibleAdviceTest {
    private static final Map<String, Localiser> PLACES = CatalogueVersion.of(
                    1, CatalogueFile.delivered(), PathsFile.delivered())
            .localisers();

    private static HeatSheet sheet(Category kind, String device, String words, Fact... facts) {
        return new HeatSheet(JobSheet.open(new Entry(
                        HeatSheet.stamp(1),
                        new Opened(
                                "40718-6",
                                "It does not work",
                                "",
                                kind,
                                device,
                                "Office",
                                1,
                                Priority.Impact.ONE_PERSON,
                                Priority.Urgency.HINDERED,
                                "ines",
                                Set.of(Role.TECHNICIAN)))))
                .with(new SymptomRecorded(words, words, false))
                .with(facts);
    }

    private static Diagnosis diagnosis(HeatSheet sheet) {
        return Diagnosis.of(
                sheet.sheet(),
                Optional.ofNullable(PLACES.get(sheet.sheet().opened().category().catalogue()))
                        .orElseThrow(),
                SheetReader.PLAIN);
    }

    private static FindingAnswered seen(String finding, String value) {
        return new FindingAnswered(finding, finding + "?", value, Source.SEEN);
    }

    private static Set<String> present(HeatSheet sheet) {
        return diagnosis(sheet).where().masses().keySet();
    }

    @ParameterizedTest
    @CsvSource({
        "Desk computer, lidcable, false",
        "Laptop, lidcable, true",
        "Thing, lidcable, true",
        "Desk computer, mcord, true",
        "Laptop, mcord, false"
    })
    void whatADeviceOfThatNameDoesNotHave_isNotLookedFor(String device, String segment, boolean there) {
        String called = device.equals("Laptop") ? "The screen of the laptop" : device;
        assertEquals(
                there,
                present(sheet(Category.DISPLAY, called, "The picture is bad")).contains(segment));
    }

    @Test
    void anAnswer_countsMoreThanTheNameOfTheDevice() {
        HeatSheet sheet = sheet(Category.DISPLAY, "Desk computer", "The picture is bad", seen("d30", "yes"));
        assertTrue(present(sheet).contains("lidcable"));
    }

    @ParameterizedTest
    @CsvSource({
        "The mouse stops, false",
        "The mouse stops at the docking station and its dock, true",
        "The mouse stops when it is on the hub, true"
    })
    void whatMostDevicesDoNotHave_isThereOnceItIsNamed(String words, boolean there) {
        assertEquals(there, present(sheet(Category.USB, "Desk computer", words)).contains("hub"));
    }

    @Test
    void aStickHasNoCable_andAPrinterOnUsbNoNetwork() {
        assertTrue(present(sheet(Category.USB, "Laptop", "It is not seen")).contains("cable"));
        assertFalse(present(sheet(Category.USB, "Laptop", "It is not seen", seen("u14", "stick")))
                .contains("cable"));
        assertTrue(present(sheet(Category.PRINTING, "Printer", "It prints nothing"))
                .contains("netlink"));
        assertFalse(present(sheet(Category.PRINTING, "Label printer on USB", "It prints nothing"))
                .contains("netlink"));
    }

    @ParameterizedTest
    @CsvSource({
        "WIRED, No network; the little lamp at the plug is off, n1=yes",
        "WIRED, No network; the LED at the plug is off, n1=yes",
        "WIRED, It cannot reach the server but the plug lamp is lit, n1=no",
        "WIRELESS, There is no Wi-Fi symbol any more, w6=yes",
        "USB, My USB stick is not recognized, u14=stick"
    })
    void wordsForOneThing_areHeardAlike(Category kind, String words, String heard) {
        HeatSheet sheet = sheet(kind, "Laptop", words);
        List<String> all = Suggestions.of(sheet.sheet(), diagnosis(sheet)).stream()
                .map(s -> s.finding() + "=" + s.value())
                .toList();
        assertTrue(all.contains(heard), all.toString());
    }

    @Test
    void onceTheFaultIsGone_nothingIsTested_andWhatWasDoneStays() {
        Fact names = seen("n5", "yes");
        Diagnosis before = diagnosis(sheet(Category.WIRED, "Desk computer", "It does not open", names));
        Diagnosis gone = diagnosis(
                sheet(Category.WIRED, "Desk computer", "It does not open", names, seen("bypass:names", "yes")));
        assertFalse(before.tests().isEmpty());
        assertEquals(List.of(), gone.tests());
        assertEquals(Set.of("names"), gone.where().mended());
        Action next = gone.next().orElseThrow();
        assertEquals(Action.Type.REPAIR, next.type());
        assertEquals("segment:names", next.id());
    }

    @Test
    void aChangeThatWasTakenBack_isLeftSo_withoutARepairOfOneOfTheManyPlacesItTouched() {
        Map<ChangeKind, ChangeAnswer> answers = new EnumMap<>(ChangeKind.class);
        for (ChangeKind k : ChangeKind.values()) {
            answers.put(k, k == ChangeKind.INFRASTRUCTURE ? ChangeAnswer.YES : ChangeAnswer.NO);
        }
        Diagnosis gone = diagnosis(sheet(
                Category.WIRED,
                "Desk computer",
                "It is slow",
                new ChangesAsked(answers, "a new switch"),
                seen("undo", "yes")));
        assertTrue(gone.where().mended().size() > 1, gone.where().mended().toString());
        assertEquals(List.of(), gone.tests());
        assertEquals(Optional.empty(), gone.next());
    }

    @Test
    void whatProvesTheCause_isActedOn() {
        Diagnosis moved = diagnosis(sheet(Category.PRINTING, "Printer", "It prints nothing", seen("r11", "yes")));
        assertEquals(Optional.of("print/address-changed"), moved.where().proven());
        assertEquals(Optional.of(Action.Type.TEST), moved.advice().recommended().map(Action::type));
        assertEquals(List.of(), moved.tests());
        assertEquals(Optional.of("print/address-changed"), moved.next().map(Action::id));
    }

    @Test
    void whereNoTestIsWorthItsTurn_theLikelyRepairIsAdvised_andNotJustAnyTest() {
        Diagnosis worn = diagnosis(sheet(
                Category.BATTERY,
                "Laptop",
                "It lasts half an hour",
                seen("b6", "no"),
                seen("b13", "no"),
                seen("b17", "no"),
                seen("b1", "below"),
                seen("b2", "below"),
                seen("b5", "no")));
        assertEquals(Optional.empty(), worn.where().proven());
        assertEquals(Optional.of(Action.Type.TEST), worn.advice().recommended().map(Action::type));
        assertEquals(List.of(), worn.tests());
        assertEquals(Optional.of("segment:battery"), worn.next().map(Action::id));
    }

    /** A new cable mends no driver, and a nozzle that prints its own page badly no queue. */
    @Test
    void aTestOfOnePart_saysNothingForTheOthers() {
        Map<String, Double> before =
                diagnosis(sheet(Category.USB, "Scanner", "It is bad")).where().masses();
        Map<String, Double> after = diagnosis(sheet(Category.USB, "Scanner", "It is bad", seen("u7", "yes")))
                .where()
                .masses();
        assertTrue(after.get("cable") > 0.6, after.toString());
        assertTrue(after.get("driver") < before.get("driver"), after.toString());
        assertTrue(after.get("program") < before.get("program"), after.toString());
    }

    @Test
    void theOwnTestPageOfAPrinter_isBad_onlyWhereThePrinterIs() {
        Map<String, Double> before = diagnosis(sheet(Category.PRINTING, "Printer", "It is bad"))
                .where()
                .masses();
        Map<String, Double> after = diagnosis(sheet(Category.PRINTING, "Printer", "It is bad", seen("r3", "yes")))
                .where()
                .masses();
        for (String page : List.of("image", "toner", "fuser")) {
            assertTrue(after.get(page) > before.get(page), page);
        }
        for (String job : List.of("program", "driver", "queue", "address")) {
            assertTrue(after.get(job) < before.get(job), job);
        }
    }

    @Test
    void aNameThatIsNotFound_whileTheAddressIs_isTheNameServers() {
        Map<String, Double> masses = diagnosis(sheet(Category.WIRED, "Desk computer", "It is bad", seen("n5", "yes")))
                .where()
                .masses();
        assertEquals(
                "names",
                masses.entrySet().stream()
                        .max(Map.Entry.comparingByValue())
                        .orElseThrow()
                        .getKey());
    }

    @Test
    void whatWasLeftOut_isNotReplacedAsWell() {
        Map<String, String> withheld = diagnosis(sheet(
                        Category.POWER, "Desk computer", "It is dead", seen("p1", "yes"), seen("bypass:strip", "no")))
                .where()
                .withheld();
        assertEquals("it was replaced or left out already", withheld.get("substitute:strip"));
    }

    /** A cable that is seen to be crushed is replaced, not put on the tester. */
    @Test
    void onceOneProofSpokeForTheCause_aLongerOneIsNotPutFirst() {
        HeatSheet crushed = sheet(Category.WIRED, "Desk computer", "It is slow", seen("n6", "no"), seen("n39", "yes"));
        assertEquals("wired/patch-cable", diagnosis(crushed).ranking().topListed());
        assertFalse(diagnosis(crushed).tests().stream().anyMatch(t -> t.id().equals("n7")));
    }

    @Test
    void whatIsBadWithoutTheAttached_isBadBehindAnyOtherPlaceToo() {
        HeatSheet plain = sheet(Category.BOOT, "Desk computer", "It is bad");
        double before = diagnosis(plain).where().masses().getOrDefault("system", 0.0);
        HeatSheet bare = sheet(Category.BOOT, "Desk computer", "It is bad", seen("point:hardware.attached", "bad"));
        assertTrue(diagnosis(bare).where().masses().getOrDefault("system", 0.0) > before);
    }

    private static boolean offers(Category kind, String device, String test, Fact... answers) {
        return diagnosis(sheet(kind, device, "It is bad", answers)).advice().actions().stream()
                .anyMatch(a -> a.id().equals(test));
    }

    /** Nobody looks for the light of a link that is slow: it is lit, and what waits for that is on offer. */
    @ParameterizedTest
    @CsvSource({
        "WIRED, n34, yes, n2, true",
        "WIRED, n34, yes, n8, true",
        "WIRED, n1, no, n2, true",
        "WIRED, n1, yes, n2, false",
        "POWER, p38, yes, p6, true",
        "BOOT, o18, yes, o20, false",
        "BOOT, o27, yes, o20, true"
    })
    void whatNobodyAsksAnyMore_countsAsUsual_forWhatWaitsForIt(
            Category kind, String finding, String value, String test, boolean offered) {
        assertEquals(offered, offers(kind, "Desk computer", test, seen(finding, value)));
    }

    @ParameterizedTest
    @CsvSource({
        "USB, u2, yes, u19",
        "POWER, p38, yes, p21",
        "POWER, p17, yes, p4",
        "POWER, p17, yes, p6",
        "WIRED, n34, yes, n3",
        "WIRED, n34, yes, n5",
        "WIRED, n34, yes, n12",
        "WIRED, n34, yes, n20",
        "WIRED, n6, no, n46",
        "WIRED, n6, no, n47",
        "HEAT, h9, yes, h28",
        "HEAT, h9, yes, log",
        "MEMORY, m14, yes, log",
        "MEMORY, m17, yes, bypass:program",
        "MEMORY, m2, yes, bypass:program"
    })
    void whatMakesNoSenseThere_isNotOffered(Category kind, String finding, String value, String test) {
        assertFalse(offers(kind, "Server on a UPS", test, seen(finding, value)));
    }

    /** A printer on USB has no neighbours and no address. */
    @ParameterizedTest
    @CsvSource({"r8", "r4", "r17", "bypass:address"})
    void whatTheNameOfTheDeviceAnswers_isNotAsked_norWhatItMakesIdle(String test) {
        assertTrue(offers(Category.PRINTING, "Label printer", test), test);
        assertFalse(offers(Category.PRINTING, "Label printer on USB", test), test);
    }

    @Test
    void anAnswer_opensAgainWhatTheNameOfTheDeviceShut() {
        assertTrue(offers(Category.PRINTING, "Label printer on USB", "r8", seen("r17", "no")));
    }

    private static Optional<String> heard(Category kind, String words, String finding) {
        HeatSheet sheet = sheet(kind, "Laptop", words);
        return Suggestions.of(sheet.sheet(), diagnosis(sheet)).stream()
                .filter(s -> s.finding().equals(finding))
                .map(Suggestions.Suggestion::value)
                .findFirst();
    }

    /** That there is a dock does not say that somebody worked without it. */
    @ParameterizedTest
    @CsvSource({
        "USB, The mouse hangs on the dock, u4, ask",
        "USB, Without the dock it is good, u4, yes",
        "USB, The headset is a bluetooth one, u11, ask",
        "DISPLAY, My second monitor is dark, d15, ask",
        "VOICE, It does not ring, v19, ask",
        "VOICE, The calls are forwarded, v19, yes",
        "WIRED, The cable lies under the chair, n39, ask",
        "BOOT, My colleague says so, o20, ask",
        "USB, I tried another port and it works in another port, u2, yes"
    })
    void whatOnlyNamesATrial_raisesIt_andDoesNotSayHowItCameOut(
            Category kind, String words, String finding, String value) {
        assertEquals(Optional.of(value), heard(kind, words, finding));
    }
}
