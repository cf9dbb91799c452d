package org.benchtrail.browser;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assumptions;

/**
 * The system's Chromium, started once for all journeys and ended with the tests. Where there is none the browser tests say so
 * and are left out, unless the build asks for it.
 */
final class Chromium {
    private static @Nullable Browser browser;

    private Chromium() {}

    static synchronized Browser browser() {
        if (browser == null) {
            browser = start();
        }
        return browser;
    }

    private static Browser start() {
        Optional<Path> executable = find();
        if (executable.isEmpty()) {
            String sentence =
                    "No Chromium was found, so the browser tests are left out. Install it from the system's packages,"
                            + " or name it in BENCHTRAIL_CHROMIUM.";
            if ("true".equals(System.getenv("BENCHTRAIL_REQUIRE_BROWSER"))) {
                throw new AssertionError(sentence);
            }
            System.out.println(sentence);
            Assumptions.abort(sentence);
        }
        Playwright playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        Browser started = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(executable.get())
                        .setArgs(List.of(
                                "--no-sandbox",
                                "--disable-gpu",
                                "--disable-quic",
                                "--no-first-run",
                                "--disable-background-networking",
                                "--disable-component-update",
                                "--disable-sync")));
        Runtime.getRuntime().addShutdownHook(new Thread(playwright::close));
        return started;
    }

    private static Optional<Path> find() {
        String named = System.getenv().getOrDefault("BENCHTRAIL_CHROMIUM", "");
        // the shell first: a whole browser loads windows of its own beside the pages, and has hung as a page was closed
        return Stream.of(
                        named,
                        "/usr/bin/chromium-headless-shell",
                        "/usr/bin/chromium",
                        "/usr/bin/chromium-browser",
                        "/usr/bin/google-chrome")
                .filter(s -> !s.isEmpty())
                .map(Path::of)
                .filter(Files::isExecutable)
                .findFirst();
    }
}
