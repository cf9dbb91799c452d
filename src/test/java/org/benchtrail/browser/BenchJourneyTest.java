package org.benchtrail.browser;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URL;
import java.util.Set;
import java.util.regex.Pattern;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** One calculation of each trade in a browser: a value is changed and the verdict follows without a press of a button. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class BenchJourneyTest {
    private static final String PASSWORD = "a long enough password";

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs acts;

    private Person somebody() {
        acts.ensureAccount("bench-walker", "Wil Example", Set.of(Role.TECHNICIAN), PASSWORD);
        return new Person(server.toString()).signIn("bench-walker", PASSWORD);
    }

    private static void open(Person person, String title) {
        person.go("/bench");
        person.page
                .getByRole(
                        AriaRole.LINK,
                        new Page.GetByRoleOptions().setName(title).setExact(true))
                .click();
        person.page.locator("a:has-text('Show an example')").click();
    }

    /** Waits until the verdict reads so. */
    private static void verdict(Person person, String words) {
        PlaywrightAssertions.assertThat(person.page.locator("#result .verdict strong"))
                .hasText(words);
    }

    @Test
    void oneOfEachTrade_answersAChangedValueAtOnce() {
        try (Person wil = somebody()) {
            wil.go("/bench");
            wil.look("bench");

            open(wil, "DC rails");
            wil.fill("readings[0].load", "11,2");
            verdict(wil, "outside the guide");
            wil.look("bench-rails");
            PlaywrightAssertions.assertThat(wil.page).hasURL(Pattern.compile(".*/bench/rails\\?.*11%2C2.*"));
            wil.page.reload();
            verdict(wil, "outside the guide");

            open(wil, "Fan speed");
            wil.fill("speed", "0");
            verdict(wil, "stalled");

            open(wil, "Disk array");
            wil.select("level", "RAID0");
            verdict(wil, "survives no failure");
            wil.look("bench-array");

            open(wil, "Memory module fit");
            wil.select("form", "SO_DIMM");
            verdict(wil, "does not fit");
            wil.look("bench-module");

            open(wil, "Packet loss");
            wil.fill("lost", "0");
            verdict(wil, "too few probes to say");

            open(wil, "Radio link");
            wil.fill("distance", "5000");
            verdict(wil, "too weak for the rate");

            open(wil, "Voice quality");
            wil.fill("loss", "30");
            verdict(wil, "below poor");
            wil.look("bench-voice");

            open(wil, "Soak time");
            wil.fill("clean", "1");
            verdict(wil, "not long enough yet");
        }
    }

    @Test
    void badValue_isToldBesideItsFieldWhileTypingAndGoesWhenItIsMended() {
        try (Person wil = somebody()) {
            wil.go("/bench/ups-runtime?example=true");
            wil.look("bench-runtime");
            wil.fill("watts", "much");
            PlaywrightAssertions.assertThat(wil.page.locator("#f-watts-error")).containsText("'much'");
            PlaywrightAssertions.assertThat(wil.page.locator("#result")).containsText("No result");
            PlaywrightAssertions.assertThat(wil.page.locator("#spoken")).hasText("Some entries need correcting.");
            wil.look("bench-problems");
            wil.fill("watts", "200");
            PlaywrightAssertions.assertThat(wil.page.locator("#f-watts-error")).hasText("");
            PlaywrightAssertions.assertThat(wil.page.locator("#result .verdict"))
                    .isVisible();
            wil.press("Calculate");
            PlaywrightAssertions.assertThat(wil.page.locator("#result .verdict"))
                    .isVisible();
        }
    }

    @Test
    void result_goesToAJobSheet_andComesBackWithItsValues() {
        try (Person wil = somebody()) {
            wil.go("/new-ticket");
            wil.fill("title", "Attach a runtime");
            wil.select("category", "POWER");
            wil.fill("device", "UPS");
            wil.fill("place", "Cupboard");
            wil.fill("requester", "Rae Example");
            wil.fill("contact", "room 4");
            wil.choose("impact", "ONE_PERSON");
            wil.choose("urgency", "HINDERED");
            wil.press("Open the ticket");
            wil.go("/bench/ups-runtime");
            wil.fill("blocks", "2");
            wil.fill("blockVolts", "12");
            wil.fill("ampHours", "9");
            wil.fill("ratedHours", "20");
            wil.fill("exponent", "1.15");
            wil.fill("health", "85");
            wil.fill("efficiency", "90");
            wil.fill("usable", "100");
            wil.fill("shutdownMinutes", "5");
            wil.fill("watts", "137");
            PlaywrightAssertions.assertThat(wil.page.locator("#result input[name='watts']"))
                    .hasValue("137");
            wil.press("Attach to a ticket");
            wil.sees("Attach to a ticket: UPS runtime");
            wil.look("bench-attach");
            wil.press("Attach");
            wil.sees("Nothing was attached yet");
            wil.page.locator("label:has-text('Attach a runtime') input").first().check();
            wil.press("Attach");
            wil.sees("From the bench");
            wil.sees("long enough for an orderly shutdown");
            wil.look("sheet-with-bench-result");
            wil.page
                    .locator("xpath=//h3[.='From the bench']/following::a[starts-with(@aria-label, 'Entry')]")
                    .first()
                    .click();
            wil.page.locator("a:has-text('Calculate it again')").click();
            verdict(wil, "long enough for an orderly shutdown");
            PlaywrightAssertions.assertThat(wil.page.locator("#f-watts")).hasValue("137.0");
        }
    }
}
