package org.benchtrail.browser;

import com.microsoft.playwright.Locator;

/** What a journey fills in at the steps of a ticket where nothing special happens. */
final class Steps {
    private Steps() {}

    static void newTicket(Person person, String title, String category) {
        person.fill("title", title);
        person.select("category", category);
        person.fill("device", "desktop DT-30");
        person.fill("place", "Larkfield Surveyors, reception");
        person.fill("requester", "A. Moss");
        person.fill("contact", "extension 200");
        person.choose("impact", "ONE_PERSON");
        person.choose("urgency", "HINDERED");
        person.press("Open the ticket");
    }

    /** The questions of identify, but for the symptom. */
    static void identify(Person person, boolean measured) {
        answers(person, measured);
        person.press("Save and go to Theorize");
    }

    /** As {@link #identify}, not sent yet. */
    static void answers(Person person, boolean measured) {
        person.chooseEach("hazards.present.", "false");
        person.choose("data.state", "NO_USER_DATA");
        person.fill("onset.when", "this morning");
        person.chooseAll("Nothing changed", "changes.answers.", "NO");
        person.choose("reproduction.outcome", "YES");
        person.fill("reproduction.how", "Switched it on, waited");
        if (!measured) {
            person.fill("noevidence.reason", "Nothing to measure on a black screen");
        }
        person.choose("logs.looked", "nothing");
        if (person.has("likeness.looked")) {
            person.tick("likeness.looked");
        }
    }

    static void verify(Person person, boolean measured) {
        person.chooseEach("recheck-", "true");
        if (measured) {
            Locator again = person.page.locator("input[name^='again-'][name$='.value']");
            again.fill("68");
        }
        person.chooseAll("All of it works", "function.answers.", "WORKS");
        person.choose("requester.state", "AGREES");
        person.fill("prevention.text", "Checked at the yearly cleaning from now on");
        person.press("Save and go to Document");
    }

    /** The cause is the theory and is known by the repair, the time is what the record shows; closing signs it. */
    static void document(Person person) {
        person.choose("knowledge.learned", "PROPOSED");
        person.press("Sign and close the ticket");
    }
}
