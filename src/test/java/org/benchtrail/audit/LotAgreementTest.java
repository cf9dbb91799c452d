package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.benchtrail.core.method.Actor;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.Browser;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** Two readers who agree little: named with what they differ on, and kept from concluding until they have talked. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class LotAgreementTest extends LotCourse {
    private static final String PAIR = BORIS.account() + "/" + SUE.account();
    private static final String REWRITE =
            "They differ most often on 'A check whose expectation was written before its result', 2 times: its question"
                    + " is to be written anew. It asks now:";

    private void readsBoth(Browser by, Actor actor, String... faulty) {
        for (int i = 0; i < 2; i++) {
            String review = at(take(by));
            markAll(actor, review, faulty);
            at(by.post(review + "/signature", Map.of()));
        }
    }

    private static final String DAYS = "from=2025-12-01&until=2027-11-01";

    private String figure() {
        return sue.request().get("/figures/readers.csv?" + DAYS).asString();
    }

    private static String plain(String page) {
        return page.replace("&#39;", "'").replaceAll("\\s+", " ");
    }

    @Test
    void twoWhoAgreeLittle_areNamed_andTalkBeforeTheLotIsConcluded() throws IOException {
        Instant from = begins();
        ClosedTickets.one(tickets, TINA);
        ClosedTickets.one(tickets, TINA);
        stated(from, 9);
        drawn();
        readsBoth(sue, SUE, "expectation-first");
        readsBoth(boris, BORIS);
        now().differences()
                .forEach(d -> at(sue.post(
                        "/audit/" + lot + "/settlements",
                        Map.of(
                                "of",
                                d.ticket() + "/expectation-first",
                                "mark",
                                "SATISFIED",
                                "defect",
                                "",
                                "remark",
                                "It is"))));
        String page = plain(page());
        assertTrue(
                page.contains(
                        "<strong>Boris Lund and Sue Marsh:</strong> of 72 pairs of first marks they agree on 70. Kappa 0.00"),
                page);
        assertTrue(page.contains(REWRITE), page);
        assertTrue(page.contains("Boris Lund and Sue Marsh agree little."), page);
        assertTrue(page.contains("Two readers agree little: talk, and record what you agreed on."), page);
        Map<String, String> end = Map.of("decision", "We say what an expectation is");
        refused(422, sue.post("/audit/" + lot + "/conclusion", end));

        String door = "/audit/" + lot + "/talks";
        refused(403, tina.post(door, Map.of("of", PAIR, "talk", "About bounds")));
        for (String others : new String[] {"", "/", SUE.account(), SUE.account() + "/" + VERA.account(), PAIR + "/x"}) {
            refused(422, sue.post(door, Map.of("of", others, "talk", "About bounds")));
        }
        Response silent = sue.post(door, Map.of("of", PAIR, "talk", " "));
        refused(422, silent);
        assertTrue(silent.asString().contains("Say what you agreed on."));
        at(boris.post(door, Map.of("of", PAIR, "talk", "A bound with a unit is an expectation")));
        refused(422, sue.post(door, Map.of("of", PAIR, "talk", "Once more")));
        assertFalse(page().contains("agree little"), page());
        assertFalse(figure().contains(lot + ","), "nothing of a lot that is not concluded");
        at(sue.post("/audit/" + lot + "/conclusion", end));
        String agree = figure();
        assertTrue(agree.contains(lot + ",72,70,97.2,0.00,"), agree);
        assertTrue(agree.contains("70 both satisfied; 2 satisfied, not satisfied"), "rows are of Boris: " + agree);
        for (Actor reader : List.of(BORIS, SUE)) {
            assertFalse(agree.contains(reader.account()) || agree.contains(reader.name()), agree);
        }
        String behind = sue.request()
                .get("/figures/tickets?figure=readers&row=" + lot + "/1&" + DAYS)
                .asString();
        now().secondTickets().forEach(t -> assertTrue(behind.contains("/tickets/" + t), behind));
        assertTrue(plain(sue.request().get("/figures?" + DAYS).asString())
                .contains("Audit " + lot + ": the two agree little, kappa 0.00."));
        assertEquals(1, plain(page()).split("Boris Lund and Sue Marsh talked", -1).length - 1);
        try (PDDocument pdf = Loader.loadPDF(
                sue.request().get("/audit/" + lot + "/report.pdf").asByteArray())) {
            String paper = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
            assertTrue(paper.contains(REWRITE), paper);
            assertTrue(paper.contains("Boris Lund and Sue Marsh: of 72 pairs"), paper);
            assertTrue(paper.contains("Boris Lund and Sue Marsh talked A bound with a unit"), paper);
        }
    }
}
