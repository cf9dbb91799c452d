package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** Somebody outside draws a sample again: from the report on paper, with what a shell has, and nothing else. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class LotByHandTest extends LotCourse {
    private static final String HASH = "[0-9a-f]{64}";

    @Test
    void theSample_isDrawnAgain_fromThePaperAlone() throws Exception {
        Instant from = begins();
        for (int i = 0; i < 6; i++) {
            ended(TINA);
        }
        stated(from, 2);
        drawn();
        byte[] pdf = sue.request().get("/audit/" + lot + "/report.pdf").asByteArray();
        Files.write(Path.of("target", "audit-report.pdf"), pdf);
        String paper = text(pdf);

        Path desk = Files.createTempDirectory("by-hand");
        List<String> plan = lines(paper, "Plan as it was stated", "The draw");
        write(desk.resolve("plan.txt"), plan);
        write(
                desk.resolve("head.txt"),
                head(lines(paper, "Head of the log that the seed was made of:", "Each line with a dash")));
        String joined = paper.replaceAll("\\s+", "");
        assertTrue(joined.contains("head.txt" + run(desk, "sha256sum < head.txt | cut -c-64")), paper);
        assertTrue(joined.contains("plan.txt" + run(desk, "sha256sum < plan.txt | cut -c-64")), paper);

        String seed = run(desk, "cat head.txt plan.txt | sha256sum | cut -c-64");
        assertTrue(joined.contains("Seed:" + seed), "the seed of the paper");
        List<String> numbers = new ArrayList<>();
        List<String> drawn = new ArrayList<>();
        Matcher listed = Pattern.compile(
                        "([0-9]+-[0-9])(" + HASH + ").{0,60}?(not ?drawn|drawn)(?=[0-9]+-[0-9]" + HASH + "|Newest|Lot)")
                .matcher(joined);
        while (listed.find()) {
            numbers.add(listed.group(1));
            if (listed.group(3).equals("drawn")) {
                drawn.add(listed.group(1));
            }
        }
        assertEquals(6, numbers.size(), joined);
        write(desk.resolve("numbers.txt"), numbers.stream().sorted().toList());
        assertEquals(
                String.join("\n", drawn),
                run(
                        desk,
                        "while read NUMBER; do printf '%s %s\\n' \"$("
                                + said(paper).replace("SEED", seed).replace("NUMBER", "$NUMBER")
                                + " | cut -c-64)\" $NUMBER; done < numbers.txt | sort | head -n 2 | cut -d' ' -f2"));
        assertEquals(2, drawn.size());
        assertEquals(drawn, now().drawnTickets());
    }

    /** The command as it is printed, its line breaks taken out. */
    private static String said(String paper) {
        Matcher command =
                Pattern.compile("\\{ printf\\s.*?sha256sum", Pattern.DOTALL).matcher(paper);
        assertTrue(command.find(), paper);
        return command.group().replaceAll("\\s+", " ");
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument read = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(read);
        }
    }

    /** What stands between two lines of the paper; without the foot of a page and the numbers beside a list, which it comes before. */
    private static List<String> lines(String paper, String after, String before) {
        int begins = paper.indexOf('\n', paper.indexOf(after));
        return paper.substring(begins + 1, paper.indexOf("\n" + before, begins))
                .lines()
                .map(String::stripTrailing)
                .filter(line -> !line.isEmpty() && !line.matches("Lot .*, made .* page [0-9]+ of [0-9]+|[0-9]\\."))
                .toList();
    }

    /** By the first line of the instruction: an empty line behind the third, and what is broken is put together. */
    private static List<String> head(List<String> printed) {
        List<String> head = new ArrayList<>(printed.subList(0, 3));
        head.add("");
        for (String line : printed.subList(3, printed.size())) {
            if (line.startsWith("\u2014")) {
                head.add(line);
            } else {
                String begun = head.remove(head.size() - 1);
                head.add(begun + (begun.indexOf(' ', 2) < 0 ? " " : "") + line);
            }
        }
        return head;
    }

    private static void write(Path file, List<String> lines) throws IOException {
        Files.writeString(file, String.join("\n", lines) + "\n", StandardCharsets.UTF_8);
    }

    private static String run(Path desk, String command) throws IOException, InterruptedException {
        Process shell = new ProcessBuilder("sh", "-c", command)
                .directory(desk.toFile())
                .redirectErrorStream(true)
                .start();
        String said = new String(shell.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertEquals(0, shell.waitFor(), said);
        return said;
    }
}
