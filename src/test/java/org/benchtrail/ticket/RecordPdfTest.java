package org.benchtrail.ticket;

import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.AttackSite.CLOSE;
import static org.benchtrail.ticket.AttackSite.MENTOR_SIGNS;
import static org.benchtrail.ticket.AttackSite.approved;
import static org.benchtrail.ticket.AttackSite.corrected;
import static org.benchtrail.ticket.AttackSite.first;
import static org.benchtrail.ticket.AttackSite.struck;
import static org.benchtrail.ticket.AttackSite.waived;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.pages.Html;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A closed ticket's record, read back from its PDF file and from its page. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class RecordPdfTest {
    @Inject
    PeopleActs people;

    private AttackSite site;

    @BeforeEach
    void people() {
        site = new AttackSite(people);
    }

    /** A trainee's ticket with all that a record has to tell: struck, corrected, remarked, waived, approved. */
    private ApiDesk closed() {
        ApiDesk desk = site.desk("way-tom");
        desk.identifies();
        int reading = first(desk, "reading-recorded");
        desk.does(corrected(reading, ApiDesk.reading("97.5")));
        desk.does(ApiDesk.reading("98"));
        int hum = desk.does("{\"kind\":\"extract-recorded\",\"source\":\"Ear\",\"text\":\"It hums <&> loudly\"}");
        desk.lets("way-marek", "{\"kind\":\"remarked\",\"entry\":" + hum + ",\"text\":\"Is that the transformer?\"}");
        desk.does(struck(hum));
        desk.does(ADVANCE);
        desk.does(ApiDesk.OBVIOUS);
        desk.tests(desk.theory("Clogged cooler"), "SUPPORTS");
        desk.does(ADVANCE);
        int action = desk.does(AttackSite.action("Clean the cooler"));
        desk.lets("way-sue", waived("maker-consulted"));
        desk.lets("way-sue", approved(action));
        desk.carriesOut(action);
        desk.verifies();
        desk.documents();
        desk.lets("way-marek", MENTOR_SIGNS);
        desk.does(CLOSE);
        return desk;
    }

    private static Response get(String login, String path) {
        return Browser.signedIn(login, "a long enough password").get(path);
    }

    /** In one line, as the words stand on the page and not as they are broken. */
    private static String flat(String text) {
        return text.replaceAll("[\\s\u202f]+", " ");
    }

    private static void assertTells(String text, List<String> all) {
        for (String words : all) {
            assertTrue(text.contains(words), () -> "'" + words + "' is not in: " + text);
        }
    }

    @Test
    void pdf_tellsAllThatIsRecorded() throws IOException {
        ApiDesk desk = closed();
        Response file = get("way-ole", "/tickets/" + desk.number + "/record.pdf");
        assertEquals(200, file.statusCode());
        assertEquals("application/pdf", file.contentType());
        Files.write(Path.of("target", "record.pdf"), file.asByteArray());
        try (PDDocument document = Loader.loadPDF(file.asByteArray())) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(false);
            String text = flat(stripper.getText(document));
            assertTells(text, told(desk));
            assertEquals(2, limitLines(document), "the limit and its key are drawn");
            int pages = document.getNumberOfPages();
            for (int page = 1; page <= pages; page++) {
                assertTrue(text.contains("page " + page + " of " + pages), text);
            }
        }
    }

    /** Lines with the dashes of a limit among all drawings, which stand apart from the text. */
    private static int limitLines(PDDocument document) throws IOException {
        int lines = 0;
        for (PDPage page : document.getPages()) {
            for (COSName name : page.getResources().getXObjectNames()) {
                if (page.getResources().getXObject(name) instanceof PDFormXObject drawing) {
                    lines += Collections.frequency(dashes(drawing), List.of(7f, 4f));
                }
            }
        }
        return lines;
    }

    private static List<List<Float>> dashes(PDFormXObject drawing) throws IOException {
        List<List<Float>> dashes = new ArrayList<>();
        COSArray last = new COSArray();
        for (Object token : new PDFStreamParser(drawing).parse()) {
            if (token instanceof COSArray array) {
                last = array;
            } else if (token instanceof Operator operator && operator.getName().equals("d")) {
                dashes.add(last.toCOSNumberFloatList());
            }
        }
        return dashes;
    }

    /** Readings with verdicts, checks, cautions, approval, waiver, correction, remark, signatures and the last hash. */
    private static List<String> told(ApiDesk desk) {
        return List.of(
                "97.5 \u00b0C",
                "outside",
                "\u25b2",
                "at most 85 \u00b0C, nameplate",
                "68 \u00b0C",
                "within",
                "\u25cf",
                "temperature, processor: 96.5 \u00b0C, outside its limit",
                "Misheard",
                "It hums <&> loudly",
                "Struck out",
                "Is that the transformer?",
                "Open it",
                "Dust between the fins",
                "Seen way-tom",
                "supports",
                "waived",
                Requirements.of("maker-consulted").orElseThrow().title() + ": It has to be",
                "plan approved",
                "cautions acknowledged",
                "Clogged cooler",
                "Cleaned",
                "way-marek",
                "The chain holds: " + desk.version + " entries",
                desk.trail().get(desk.version - 1).at("/hash").asText());
    }

    @Test
    void closedTicket_opensAsItsRecord_summaryFirst() {
        ApiDesk desk = closed();
        for (String at : List.of("/tickets/" + desk.number + "/record", "/tickets/" + desk.number)) {
            String page = flat(get("way-ole", at).asString());
            assertTrue(
                    page.contains(desk.trail().get(desk.version - 1).at("/hash").asText()), page);
            assertTrue(page.contains("<del>temperature, processor: 96.5"), page);
            assertTrue(page.contains("href=\"/tickets/" + desk.number + "/record.pdf\""), page);
            assertEquals(
                    List.of(
                            "Summary",
                            "Ticket",
                            "1 Identify",
                            "2 Theorize",
                            "3 Test",
                            "4 Plan",
                            "5 Verify",
                            "6 Document",
                            "Trail"),
                    Html.read(page).select("article.doc h2").stream()
                            .map(heading -> heading.ownText())
                            .toList());
            assertTrue(Html.read(page).select("article.doc details").isEmpty(), "nothing is folded");
        }
    }

    @Test
    void closedTicket_offersWhatCanStillBeDone_toWhoMay() {
        ApiDesk desk = closed();
        assertEquals(
                List.of("PDF", "Trail with proofs", "Trail", "Added after closing", "Reopen"), tools(desk, "way-tom"));
        assertEquals(List.of("PDF", "Trail with proofs", "Trail", "Review", "Reopen"), tools(desk, "way-sue"));
        assertEquals(List.of("PDF", "Trail with proofs", "Trail", "Reopen"), tools(desk, "way-ole"));
    }

    private static List<String> tools(ApiDesk desk, String who) {
        return Html.read(get(who, "/tickets/" + desk.number).asString())
                .select(".title .tools a")
                .eachText();
    }

    @Test
    void openTicket_hasARecordOfWhatThereIs() throws IOException {
        ApiDesk desk = site.atPlan("way-ines");
        byte[] file = get("way-ole", "/tickets/" + desk.number + "/record.pdf").asByteArray();
        try (PDDocument document = Loader.loadPDF(file)) {
            assertTells(flat(new PDFTextStripper().getText(document)), List.of("open, at Plan", "not signed yet"));
        }
    }
}
