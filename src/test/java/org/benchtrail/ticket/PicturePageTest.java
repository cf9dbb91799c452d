package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.benchtrail.pages.Html;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A picture put beside a ticket, marked without a script, and what is marked shown wherever the picture is. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class PicturePageTest {
    private static final String PASSWORD = "a long enough password";

    @Inject
    PeopleActs people;

    private AttackSite site;
    private Browser ines = new Browser();

    @BeforeEach
    void people() {
        site = new AttackSite(people);
        ines = Browser.signedIn("way-ines", PASSWORD);
    }

    private static byte[] jpeg() {
        try (ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            ImageIO.write(new BufferedImage(60, 30, BufferedImage.TYPE_INT_RGB), "jpg", out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** By the form of the sheet; the entry of the file. */
    private int attaches(ApiDesk desk, String type, Map<String, String> also) {
        ines.get("/tickets/" + desk.number);
        var form = ines.request()
                .multiPart("csrf-token", ines.formToken())
                .multiPart("version", "" + desk.version)
                .multiPart("shows", "The fan")
                .multiPart("file", "fan.jpg", jpeg(), type);
        for (Map.Entry<String, String> field : also.entrySet()) {
            form = form.multiPart(field.getKey(), field.getValue());
        }
        Response answer = form.post("/tickets/" + desk.number + "/attachments");
        assertEquals(303, answer.statusCode(), answer.asString());
        return ++desk.version;
    }

    private Response marks(ApiDesk desk, int picture, String... fields) {
        String page = "/tickets/" + desk.number + "/pictures/" + picture;
        Map<String, String> typed = new HashMap<>(Map.of("version", "" + desk.version));
        for (int i = 0; i < fields.length; i += 2) {
            typed.put("mark." + fields[i], fields[i + 1]);
        }
        return ines.post(page, typed);
    }

    private Document page(ApiDesk desk, int picture) {
        return Html.read(
                ines.get("/tickets/" + desk.number + "/pictures/" + picture).asString());
    }

    @Test
    void whatTheDeviceSays_isShownAsItsWord() {
        ApiDesk desk = site.desk("way-ines");
        int picture = attaches(
                desk, "image/jpeg", Map.of("deviceTime", "2026-11-20T08:15:00.123Z", "scaledFrom", "4032 x 3024"));
        String text = page(desk, picture).text();
        assertTrue(text.contains("The device says that it is of 20 Nov 2026 08:15"), text);
        assertTrue(text.contains("it was 4032 x 3024 points"), text);
        int plain = attaches(desk, "image/jpeg", Map.of());
        assertFalse(page(desk, plain).text().contains("The device says"));
    }

    @Test
    void mark_isTypedInPerCent_andShownWhereverThePictureIs() throws IOException {
        ApiDesk desk = site.desk("way-ines");
        int picture = attaches(desk, "image/jpeg", Map.of());
        String[] arrow = {"mark", "ARROW", "fromX", "12.5", "fromY", "0", "toX", "50", "toY", "99,9", "text", "<b>Dust"
        };
        String sheet = "/tickets/" + desk.number;
        int drawn = onPaper(sheet, PDFormXObject.class); // the head of the log has a drawing of its own
        assertEquals(303, marks(desk, picture, arrow).statusCode());
        desk.version++;
        for (String at : List.of(sheet + "/pictures/" + picture, sheet, sheet + "/record")) {
            Document shown = Html.read(ines.get(at).asString());
            assertEquals("12.5%", shown.select(".marked svg .ink line").attr("x1"), at);
            assertEquals("99.9%", shown.select(".marked svg .ink line").attr("y2"), at);
            assertEquals(
                    List.of("<b>Dust"), shown.select(".marked svg .ink text").eachText(), at);
        }
        assertEquals(1, onPaper(sheet, PDImageXObject.class), "the picture");
        assertEquals(drawn + 1, onPaper(sheet, PDFormXObject.class), "the drawing over it");
    }

    private int onPaper(String sheet, Class<?> kind) throws IOException {
        byte[] pdf = ines.request().get(sheet + "/record.pdf").asByteArray();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return on(document, kind);
        }
    }

    private static int on(PDDocument document, Class<?> kind) throws IOException {
        int count = 0;
        for (PDPage page : document.getPages()) {
            PDResources resources = page.getResources();
            for (COSName name : resources.getXObjectNames()) {
                count += kind.isInstance(resources.getXObject(name)) ? 1 : 0;
            }
        }
        return count;
    }

    @Test
    void markThatIsRefused_leadsToItsField_andIsKept() {
        ApiDesk desk = site.desk("way-ines");
        int picture = attaches(desk, "image/jpeg", Map.of());
        Response refused = marks(desk, picture, "mark", "CIRCLE", "fromX", "101", "fromY", "a", "toX", "5", "toY", "5");
        assertEquals(422, refused.statusCode());
        Document page = Html.read(refused.asString());
        assertEquals(List.of("#mark.fromY"), page.select(".problems a").eachAttr("href"));
        assertEquals("101", page.getElementById("mark.fromX").val());
        refused = marks(desk, picture, "mark", "CIRCLE", "fromX", "101", "fromY", "1", "toX", "5", "toY", "5");
        assertEquals(
                List.of("#mark.fromX"),
                Html.read(refused.asString()).select(".problems a").eachAttr("href"));
        assertTrue(page(desk, picture).select(".marked svg").isEmpty());
    }

    @Test
    void whatIsNoPictureOfThisTicket_hasNoPage() {
        ApiDesk desk = site.desk("way-ines");
        int log = attaches(desk, "text/plain", Map.of());
        ApiDesk other = site.desk("way-ines");
        int picture = attaches(other, "image/jpeg", Map.of());
        desk.does(AttackSite.symptom("Dark", "No light", false));
        for (int entry : new int[] {1, log, picture + 1, 999}) {
            assertEquals(
                    404,
                    ines.get("/tickets/" + desk.number + "/pictures/" + entry).statusCode());
            assertFalse(List.of(200, 303)
                    .contains(marks(desk, entry, "mark", "ARROW", "fromX", "1", "fromY", "1", "toX", "5", "toY", "5")
                            .statusCode()));
        }
    }
}
