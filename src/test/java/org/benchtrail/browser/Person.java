package org.benchtrail.browser;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.PlaywrightException;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assertions;

/** Somebody at a browser: fills forms by the names of their fields, presses buttons by their words, counts what is sent. */
final class Person implements AutoCloseable {
    /** Of tables that tell something, not of those that are filled in. */
    private static final String ROWS = "main tbody tr:not(form:not(.wide-form) tr)";

    private static final int WIDE = 1280;
    private static final int NARROW = 360;
    private static final boolean PICTURES = Boolean.getBoolean("pictures");

    private final BrowserContext context;
    private final String server;
    private final List<String> complaints = new ArrayList<>();
    private int sent;
    private int touched;
    private long waited;
    final Page page;

    Person(String server) {
        this(server, WIDE, true);
    }

    /**
     * @param width of the screen, px
     * @param scripts whether the browser runs them
     */
    Person(String server, int width, boolean scripts) {
        this.server = server.replaceAll("/$", "");
        context = Chromium.browser()
                .newContext(new Browser.NewContextOptions()
                        // without scripts nothing tells the driver that a page has come to rest after it was scrolled
                        .setViewportSize(width, scripts ? 900 : 6000)
                        .setJavaScriptEnabled(scripts)
                        .setLocale("en-GB"));
        page = context.newPage();
        page.setDefaultTimeout(20_000);
        page.onRequest(r -> {
            if (r.method().equals("POST") && !r.url().contains("/draft/")) {
                sent++;
            }
        });
        page.onConsoleMessage(m -> {
            // an answer that is meant to be an error shows in the console as well
            if (m.type().equals("error") && !m.text().matches(".*status of (401|409|422).*")) {
                complaints.add(m.text());
            }
        });
    }

    Person signIn(String login, String password) {
        go("/sign-in");
        page.fill("#login", login);
        page.fill("#password", password);
        press("Sign in");
        return this;
    }

    void go(String path) {
        page.navigate(server + path);
    }

    /** Whether that is a page; a file is fetched and not shown. */
    boolean goesToAPage(String path) {
        String type = page.request().get(server + path).headers().getOrDefault("content-type", "");
        if (type.startsWith("text/html")) {
            go(path);
        }
        return type.startsWith("text/html");
    }

    void fill(String name, String text) {
        touched++;
        unfold(name);
        page.fill("[name='" + name + "']:visible", text);
    }

    void choose(String name, String value) {
        touched++;
        String option = "input[name='" + name + "'][value='" + value + "']";
        unfoldAround(option);
        page.check(option + ":visible");
    }

    void tick(String name) {
        touched++;
        unfold(name);
        page.check("input[name='" + name + "']:visible");
    }

    void select(String name, String value) {
        touched++;
        unfold(name);
        page.selectOption("select[name='" + name + "']", value);
    }

    /** Chooses the same in every group of that beginning. */
    void chooseEach(String beginning, String value) {
        for (Locator choice : page.locator("input[name^='" + beginning + "'][value='" + value + "']")
                .all()) {
            choose(choice.getAttribute("name"), value);
        }
    }

    /** As {@link #chooseEach}, by the button that a script offers for it, if there is one. */
    void chooseAll(String words, String beginning, String value) {
        Locator shortcut = page.locator("button:visible", new Page.LocatorOptions().setHasText(whole(words)));
        if (shortcut.count() == 0) {
            chooseEach(beginning, value);
        } else {
            touched++;
            shortcut.click();
        }
    }

    boolean has(String name) {
        return page.locator("[name='" + name + "']:not([type=hidden])").count() > 0;
    }

    private void unfold(String name) {
        unfoldAround("[name='" + name + "']");
    }

    /** Opens the folded parts around a field, as a person would. */
    private void unfoldAround(String field) {
        Locator folded = page.locator("details:not([open]):has(" + field + ") > summary:visible");
        for (int most = 5; most > 0 && page.locator(field + ":visible").count() == 0 && folded.count() > 0; most--) {
            folded.first().click();
        }
    }

    void press(String words) {
        long before = System.nanoTime();
        Locator exact = page.locator("button:visible", new Page.LocatorOptions().setHasText(whole(words)));
        Locator any = page.locator("button:visible", new Page.LocatorOptions().setHasText(words));
        (exact.count() > 0 ? exact : any).first().click();
        page.waitForLoadState();
        waited += System.nanoTime() - before;
        assertFits("what '" + words + "' leads to");
    }

    /** Whether anything reaches beyond the screen. */
    private void assertFits(String what) {
        int width = page.viewportSize().width;
        int needed = neededWidth();
        Assertions.assertTrue(needed <= width, what + " needs " + needed + " px on a screen of " + width + " px");
    }

    private int neededWidth() {
        String width = "document.documentElement.scrollWidth";
        try {
            return ((Number) page.evaluate(width)).intValue();
        } catch (PlaywrightException left) { // the page that was asked for came while the one before was measured
            page.waitForLoadState();
            return ((Number) page.evaluate(width)).intValue();
        }
    }

    private static Pattern whole(String words) {
        return Pattern.compile("^\\s*" + words.replaceAll("[^\\w\\s]", ".") + "\\s*$");
    }

    String text() {
        return page.locator("main").innerText();
    }

    /** Waits a little for the words: a page that was asked for by a link is still on its way. */
    void sees(String words) {
        for (int tries = 0; tries < 50 && !text().contains(words); tries++) {
            page.waitForTimeout(100);
        }
        Assertions.assertTrue(text().contains(words), () -> "'" + words + "' is not on the page:\n" + text());
    }

    void seesNot(String words) {
        Assertions.assertFalse(text().contains(words), () -> "'" + words + "' is on the page:\n" + text());
    }

    int sent() {
        return sent;
    }

    /** How many fields were filled in, chosen or ticked so far; a shortcut counts as one. */
    int touched() {
        return touched;
    }

    /** How many forms were sent so far, and how long the pages that followed took. */
    String tally() {
        return String.format(Locale.ROOT, "%d forms sent, %.1f s waited for what came next", sent, waited / 1e9);
    }

    /**
     * Looks at the page wide and narrow: keeps pictures where {@code -Dpictures=true} asks for them, and asks axe-core for what bars
     * anybody's way and whether anything reaches beyond a narrow screen. Contrast, half of what axe-core takes, is asked for where
     * every page is looked at in every way; that the colours fit their grounds holds for all of them.
     */
    void look(String name) {
        look(name, false);
    }

    private void look(String name, boolean contrast) {
        for (int width : new int[] {WIDE, NARROW}) {
            page.setViewportSize(width, 900);
            keep(name + "-" + width);
            assertFits(name);
        }
        page.setViewportSize(WIDE, 900);
        Assertions.assertEquals(List.of(), barriers(contrast), name + ": axe-core found what bars somebody's way");
        Assertions.assertEquals(List.of(), complaints(), name + ": the browser complained");
    }

    /** As {@link #look}, by day, at night and as it is printed: with every row that the screen has, and nothing to press. */
    void lookInEveryWay(String name) {
        look(name, true);
        int rows = shown(ROWS);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        look(name + "-dark", true);
        page.emulateMedia(
                new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT).setMedia(Media.PRINT));
        keep(name + "-print");
        Assertions.assertTrue(rows <= shown(ROWS), name + ": of " + rows + " rows only " + shown(ROWS) + " on paper");
        Assertions.assertEquals(0, shown("button, .button"), name + ": buttons on paper");
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.SCREEN));
    }

    /** As {@link #look}, at the width that the screen has. @param asked whether axe-core is, which needs scripts to run */
    void looksAsItIs(String name, boolean asked) {
        keep(name);
        assertFits(name);
        Assertions.assertEquals(
                List.of(), asked ? barriers(false) : List.of(), name + ": axe-core found what bars somebody's way");
        Assertions.assertEquals(List.of(), complaints(), name + ": the browser complained");
    }

    private int shown(String selector) {
        return ((Number) page.evaluate(
                        "s => [...document.querySelectorAll(s)].filter(e => e.checkVisibility()).length", selector))
                .intValue();
    }

    private void keep(String name) {
        if (PICTURES) {
            page.screenshot(new Page.ScreenshotOptions()
                    .setPath(Path.of("target", "screenshots", name + ".png"))
                    .setFullPage(true));
        }
    }

    /** Where the links of the page lead on this server, to pages. */
    List<String> links() {
        return page.locator("a[href^='/']").all().stream()
                .map(a -> a.getAttribute("href").replaceAll("#.*", ""))
                .filter(path -> !path.isEmpty())
                .distinct()
                .toList();
    }

    /** What axe-core finds; of all that it passes nothing is carried over, which takes longer than the finding. */
    private Object barriers(boolean contrast) {
        if (!(Boolean) page.evaluate("'axe' in window")) {
            page.evaluate(AxeBuilder.getAxeScript());
        }
        return page.evaluate("""
                async contrast => (await axe.run({
                    resultTypes: ['violations'], rules: { 'color-contrast': { enabled: contrast } }
                })).violations.map(
                    v => v.id + ' ' + v.help + ' at ' + v.nodes.slice(0, 3).map(n => n.html).join(' | '))""", contrast);
    }

    /** What the console holds of errors; a calculation that was cut short because the page was left is none. */
    private List<String> complaints() {
        List<String> left = new ArrayList<>(complaints);
        while (left.remove("htmx:sendAbort")) {
            left.remove("htmx:afterRequest");
        }
        return left;
    }

    @Override
    public void close() {
        context.close();
    }
}
