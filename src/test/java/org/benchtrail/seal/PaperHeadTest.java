package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.FormatException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.qute.Qute;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.offline.VerifyCommand;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a paper names, so that whoever keeps it can hold the log against it (the attack 'PDF changed': it is no proof, and says of what). */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class PaperHeadTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TESS = new Actor("paper-tess", "Tess", Set.of(Role.TECHNICIAN, Role.SUPERVISOR));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    SealJob job;

    @Inject
    LogRows rows;

    @TempDir
    Path own;

    private Browser browser = new Browser();

    @BeforeEach
    void person() {
        people.ensureAccount(TESS.account(), TESS.name(), TESS.roles(), PASSWORD);
        browser = Browser.signedIn(TESS.account(), PASSWORD);
    }

    private TicketNumber ticket() {
        TicketNumber number = tickets.open(
                        new NewTicket(
                                "A fan that rattles",
                                "It rattles",
                                Category.HEAT,
                                "Laptop",
                                "Desk 4",
                                "Rae",
                                "room 4",
                                Priority.Impact.ONE_PERSON,
                                Priority.Urgency.CAN_WAIT,
                                false),
                        TESS)
                .number();
        job.round();
        return number;
    }

    private byte[] paper(TicketNumber number) {
        return browser.get("/tickets/" + number + "/record.pdf").asByteArray();
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    private static String found(String pattern, String text) {
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        assertTrue(matcher.find(), () -> pattern + " is not in: " + text);
        return matcher.group(1);
    }

    private int verifies(byte[] file, String typed) throws IOException {
        Path written = Files.write(own.resolve("trail.jsonl"), file);
        return VerifyCommand.run(
                List.of(written.toString(), "--earlier", typed),
                new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8));
    }

    private SignedNote newest() {
        return QuarkusTransaction.requiringNew().call(() -> rows.newestNote().orElseThrow());
    }

    @Test
    void record_namesTheHeadAndTheFile_andBothAreFoundAgainLater() throws Exception {
        TicketNumber number = ticket();
        String paper = text(paper(number));
        Checkpoint head = Checkpoint.parse(newest().text());
        assertTrue(paper.contains(head.origin()), paper);
        assertTrue(paper.contains("Signed by the shop alone. Nobody else has seen this head."), paper);
        assertTrue(paper.contains("by key " + newest().lines().get(0).keyId()), paper);
        assertTrue(paper.contains("This paper is not the proof, the file is."), paper);
        assertTrue(paper.contains("entry 1 is leaf ") || paper.contains("entries 1 to "), paper);
        assertTrue(paper.contains("Ticket " + number + ", made "), paper);

        // the log and the ticket go on, and the file is still what the paper names
        tickets.perform(number, 1, List.<Act>of(s -> new ExtractRecorded("Log", "Later")), TESS);
        ticket();
        String typed =
                found("--earlier ([1-9][0-9]*: ?[A-Za-z0-9+/]{43}=)", paper).replace(" ", "");
        String address = found("(/tickets/[0-9-]+/trail\\.jsonl\\?leaves=[0-9]+&entries=[0-9]+)", paper);
        byte[] file = browser.get(address).asByteArray();
        String all = new String(file, StandardCharsets.UTF_8);
        byte[] below = all.substring(all.indexOf('\n') + 1).getBytes(StandardCharsets.UTF_8);
        assertEquals(
                found("SHA-256 ([0-9a-f]{64})", paper),
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(below)));
        assertArrayEquals(file, browser.get(address).asByteArray(), "made again");
        assertEquals(0, verifies(file, typed));
        String other = typed.replaceFirst(":.", typed.contains(":A") ? ":B" : ":A");
        assertEquals(1, verifies(file, other), "another root");
        assertEquals(
                404, browser.get(address.replaceFirst("entries=", "entries=9")).statusCode());
        assertEquals(
                404, browser.get(address.replaceFirst("leaves=", "leaves=9")).statusCode());
    }

    @Test
    void squareCode_isReadBackFromThePaper() throws Exception {
        codeIsNewest(paper(ticket()));
    }

    private void codeIsNewest(byte[] pdf) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertEquals(newest().toString(), code(document));
        }
    }

    /** As somebody who holds a camera over it: what is not sharp from one distance is read from another. */
    private static String code(PDDocument document) throws Exception {
        ReaderException blurred = FormatException.getFormatInstance();
        for (int dots : new int[] {300, 200, 400}) {
            BufferedImage page = new PDFRenderer(document).renderImageWithDPI(document.getNumberOfPages() - 1, dots);
            int[] pixels = page.getRGB(0, 0, page.getWidth(), page.getHeight(), null, 0, page.getWidth());
            try {
                return new QRCodeReader()
                        .decode(
                                new BinaryBitmap(new HybridBinarizer(
                                        new RGBLuminanceSource(page.getWidth(), page.getHeight(), pixels))),
                                Map.of(DecodeHintType.TRY_HARDER, true))
                        .getText();
            } catch (ReaderException e) {
                blurred = e;
            }
        }
        throw blurred;
    }

    @Test
    void figures_nameTheHeadToo() {
        ticket();
        String page = browser.get("/figures").asString();
        Checkpoint head = Checkpoint.parse(newest().text());
        assertTrue(page.contains("--earlier " + head.size() + ":" + head.root().base64()), page);
        assertTrue(page.contains("aria-label=\"QR code with the checkpoint\""), page);
    }

    @Test
    void figuresOfAMonth_nameTheHeadOnPaper_withItsSquareCode() throws Exception {
        ticket();
        byte[] pdf = browser.get("/figures/" + YearMonth.now(ZoneOffset.UTC) + ".pdf")
                .asByteArray();
        Checkpoint head = Checkpoint.parse(newest().text());
        assertTrue(
                text(pdf)
                        .contains("--earlier " + head.size() + ":" + head.root().base64()),
                text(pdf));
        codeIsNewest(pdf);
    }

    /** The witnessed head of the tests of the log, and no head at all. */
    @Test
    void whoHasSeenIt_isSaid() {
        SignedNote note = SignedNote.parse("""
                log.shop.example/trail
                5
                wffwsCf3bFpyMniiwtq1eBDj5NUhuviGUJNbvkmOs48=

                \u2014 log.shop.example/trail x0W5tmXDO3utWkzhKT+jQlNafHk7KdLh+Bzof0biHLnfelgBkNi3JhAZGaJcT3tSa0Ka93A3U4pLOh+HvfwyAzTtrwo=
                \u2014 witness.example/w1 BNLYMwAAAABpVbkA6WAdIPnL+fFFNXkNQpTqP6o7kj95nuQoy8fndLZ3rivRmpPCnHT+7IZKru7J/L059XckHV6tQX3Dq0rrtdUuDw==
                """);
        PaperHead head = PaperHead.of(note, Instant.EPOCH, ZoneId.of("UTC"));
        assertEquals(List.of("witness.example/w1, 1 Jan 2026 00:00 UTC"), head.witnesses());
        assertEquals("c745b9b6", head.keys());
        assertEquals("Seen and signed by witness.example/w1, and signed by this server.", head.vouched());
        PaperHead alone =
                PaperHead.of(new SignedNote(note.text(), note.lines().subList(0, 1)), Instant.EPOCH, ZoneOffset.UTC);
        assertEquals("Signed by the shop alone. Nobody else has seen this head.", alone.vouched());
        String before = Qute.engine()
                .getTemplate("seal/paperHead")
                .data("head", PaperHead.NONE)
                .render();
        assertTrue(before.contains("Nothing is sealed yet"), before);
        assertTrue(!before.contains("Root"), before);
    }
}
