package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

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

    /** The rest of a ticket about a black screen, which a loose cable explains, until it is closed. */
    static void fromTheories(Person ines) {
        fromTheoriesToPlan(ines);
        ines.press("Carried out: go to Verify");
        verify(ines, false);
        document(ines);
        ines.sees("closed");
    }

    /** As {@link #fromTheories}, until the plan is saved. */
    static void fromTheoriesToPlan(Person ines) {
        ines.sees("Likely causes");
        ines.chooseAll("All in order", "obvious.looks.", "IN_ORDER");
        ines.choose("choice.theory", "cause:display/cable-or-plug");
        ines.fill("check.what", "Look at both ends of the cable");
        ines.fill("check.expectation", "One end is not seated");
        ines.press("Save and go to Test");
        ines.fill("result.observation", "The end at the screen hangs loose");
        ines.choose("result.outcome", "SUPPORTS");
        ines.press("Record and go on");
        assertEquals("No longer: No picture, power light blinks", ines.page.inputValue("[name='action.effect']"));
        ines.fill("action.what", "Seat the cable and fasten its screws");
        ines.fill("action.wayBack", "Put the old cable back");
        ines.choose("action.touchesStorage", "false");
        ines.choose("action.irreversible", "false");
        ines.choose("action.usesPart", "false");
        ines.fill("nomaker.text", "A cable is seated, nothing else");
        ines.press("Save the plan");
    }
}
