package org.benchtrail.ticket;

import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** What a trainee's work shows, on its page and read back from the record that they take along. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class TrainingRecordTest extends AttackCase {
    private static final String PASSWORD = "a long enough password";
    private static final String TARA = "rec-tara";
    private static final String MENTOR = "rec-mo";
    private static final Actor ADA = new Actor("rec-ann", "rec-ann", Set.of(Role.ADMINISTRATOR));
    private static final Pattern ROW = Pattern.compile("<tr>(.*?)</tr>", Pattern.DOTALL);

    private ApiDesk worked() {
        people.ensureAccount(ADA.account(), ADA.name(), ADA.roles(), PASSWORD);
        site.hire(TARA, Role.TRAINEE);
        site.hire(MENTOR, Role.MENTOR);
        people.setMentor(ADA, TARA, MENTOR);
        ApiDesk desk = site.desk(TARA);
        desk.refused(TARA, ADVANCE);
        desk.identify();
        desk.lets(
                MENTOR,
                "{\"kind\":\"remarked\",\"requirement\":\"scope-known\",\"text\":\"Two more have it\",\"mark\":\"NOT_SATISFIED\"}");
        desk.does(ApiDesk.OBVIOUS);
        desk.theory("Clogged cooler");
        return desk;
    }

    private static String text(Response pdf) {
        assertEquals("application/pdf", pdf.contentType());
        try (PDDocument document = Loader.loadPDF(pdf.asByteArray())) {
            return new PDFTextStripper().getText(document);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String bare(String text) {
        return text.replaceAll("\\s+", "");
    }

    /** The rows of the tables of a page, each as its text without spaces. */
    private static List<String> rows(String page) {
        List<String> rows = new ArrayList<>();
        Matcher row = ROW.matcher(page);
        while (row.find()) {
            String text = row.group(1)
                    .replaceAll("<[^>]*>", " ")
                    .replace("&#39;", "'")
                    .replace("&amp;", "&");
            if (text.matches("(?s).*\\d+ of \\d+.*")) {
                rows.add(bare(text));
            }
        }
        return rows;
    }

    @Test
    void theRecord_readBackFromItsFile_saysWhatThePageSays_andNothingOfForecasts() {
        ApiDesk desk = worked();
        Browser tara = Browser.signedIn(TARA, PASSWORD);
        String page = tara.get("/progress").asString();
        List<String> rows = rows(page);
        assertTrue(rows.size() > 5, page);
        assertTrue(rows.stream().anyMatch(r -> r.contains("live0of1")), rows::toString);
        String pdf = text(tara.get("/progress/record.pdf"));
        String found = bare(pdf);
        for (String row : rows) {
            assertTrue(found.contains(row), () -> row + " is not in\n" + pdf);
        }
        int shares = pdf.split("\\d+ of \\d+ ").length;
        assertTrue(shares > rows.size() / 2, pdf);
        String head = site.as(TARA)
                .get("/api/tickets/" + desk.number + "/trail")
                .jsonPath()
                .getString("hash[-1]");
        assertTrue(found.contains(String.valueOf(head)), "the head of the trail: " + head);
        for (String word : List.of("forecast", "brier", "calibrat", "stated")) {
            assertFalse(pdf.toLowerCase(Locale.ROOT).contains(word), () -> word + " stands in\n" + pdf);
        }
        String added = text(tara.get("/progress/record.pdf?forecasts=true")).toLowerCase(Locale.ROOT);
        assertTrue(added.contains("forecasts") && added.contains("stated"), "added when asked for");
    }

    @Test
    void progress_isReadByItsPerson_andTheMentorOfTheMoment_andTheRecordByItsPersonAlone() {
        ApiDesk desk = worked();
        assertEquals(
                200, Browser.signedIn(MENTOR, PASSWORD).get("/progress/" + TARA).statusCode());
        for (String other : List.of("way-ole", "way-tom", "way-marek", "way-sue")) {
            Browser browser = Browser.signedIn(other, PASSWORD);
            assertEquals(404, browser.get("/progress/" + TARA).statusCode(), other);
            assertFalse(browser.get("/progress").asString().contains(desk.number), other);
            assertFalse(text(browser.get("/progress/record.pdf")).contains(desk.number), other);
        }
        people.setMentor(ADA, TARA, "");
        assertEquals(
                404, Browser.signedIn(MENTOR, PASSWORD).get("/progress/" + TARA).statusCode());
    }
}
