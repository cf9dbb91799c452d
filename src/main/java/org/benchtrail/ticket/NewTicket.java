package org.benchtrail.ticket;

import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.text.PlainText;
import org.jspecify.annotations.Nullable;

/**
 * A report that opens a ticket.
 *
 * @param title one line: what is wrong
 * @param words the requester's own words; empty if they say no more than the title
 * @param requester who reports it
 * @param contact how to reach them
 * @param queued true to leave it in the queue; otherwise whoever opens it has it
 */
public record NewTicket(
        String title,
        String words,
        @Nullable Category category,
        String device,
        String place,
        String requester,
        String contact,
        Priority.@Nullable Impact impact,
        Priority.@Nullable Urgency urgency,
        boolean queued) {

    public NewTicket {
        title = PlainText.line(title);
        words = PlainText.paragraph(words);
        device = PlainText.line(device);
        place = PlainText.line(place);
        requester = PlainText.line(requester);
        contact = PlainText.line(contact);
    }

    /** With a place and a contact where none was given. */
    public NewTicket completedBy(String knownPlace, String knownContact) {
        return new NewTicket(
                title,
                words,
                category,
                device,
                place.isEmpty() ? knownPlace : place,
                requester,
                contact.isEmpty() ? knownContact : contact,
                impact,
                urgency,
                queued);
    }

    /** @throws Invalid naming everything about the requester that is missing */
    void check() {
        new Invalid.Collector()
                .require(!title.isEmpty(), "title", "Say in one line what is wrong.")
                .require(
                        title.length() <= 300,
                        "title",
                        "Shorten this to 300 characters; the details have their own field.")
                .require(words.length() <= 4000, "words", "Shorten this to 4000 characters.")
                .require(category != null, "category", "Choose what kind of trouble it is.")
                .require(!device.isEmpty(), "device", "Name the device, or say what it is about.")
                .require(device.length() <= 300, "device", "Shorten this to 300 characters.")
                .require(!place.isEmpty(), "place", "Say where it is.")
                .require(place.length() <= 300, "place", "Shorten this to 300 characters.")
                .require(!requester.isEmpty(), "requester", "Say who reports it.")
                .require(requester.length() <= 200, "requester", "Shorten this to 200 characters.")
                .require(PlainText.isText(requester), "requester", PlainText.WHAT_TO_DO)
                .require(PlainText.isText(contact), "contact", PlainText.WHAT_TO_DO)
                .require(!contact.isEmpty(), "contact", "Say how to reach them: telephone, mail, room.")
                .require(contact.length() <= 200, "contact", "Shorten this to 200 characters.")
                .require(impact != null, "impact", "Say who is affected.")
                .require(urgency != null, "urgency", "Say how much work is held up.")
                .throwIfAny();
    }
}
