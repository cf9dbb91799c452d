package org.benchtrail.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.method.desk.Resumed;
import org.benchtrail.ticket.form.SheetForm;
import org.benchtrail.ticket.sheet.SheetForms;
import org.junit.jupiter.api.Test;

/** Every field of every form is read by what the form is sent to: a misspelt name would lose what somebody typed. */
class FieldNamesTest {
    private static final List<PageForm> FORMS = PageForm.all();
    private static final List<Endpoint> ENDPOINTS = Endpoint.all();

    /** Read before any endpoint is reached. */
    private static final Set<String> FRAME = Set.of("csrf-token", "csrf-key");

    private final Map<String, FieldReading> readings = new HashMap<>();

    @Test
    void everyForm_isSentToAnEndpoint() {
        List<String> lost = FORMS.stream()
                .filter(f -> !f.action().equals("*") && answering(f).isEmpty())
                .map(f -> f.template() + ": " + f.method() + " " + f.action())
                .toList();
        assertEquals(List.of(), lost);
    }

    @Test
    void everyField_isReadByItsEndpoint() {
        List<String> unread = new ArrayList<>();
        int fields = 0;
        for (PageForm form : FORMS) {
            for (String field : form.fields()) {
                if (!isGiven(field) && answering(form).isPresent()) {
                    fields++;
                    if (!isRead(field, form, answering(form).get())) {
                        unread.add(form.template() + ", " + form.action() + ": " + field);
                    }
                }
            }
        }
        assertEquals(List.of(), unread);
        assertTrue(fields > 200, fields + " fields were found");
    }

    /** A form may have a group that its page has no fields of: then nobody can type its fact. */
    @Test
    void everyFactOfASheetsForm_hasFieldsOnAPage() {
        Set<Class<?>> without = new HashSet<>();
        SheetForms.ALL.stream()
                .filter(sheet -> sheet.drawn() == null)
                .forEach(sheet -> sheet.groups().forEach(group -> without.add(group.kind())));
        without.remove(Resumed.class); // says nothing but that it is
        for (PageForm form : FORMS) {
            sheetForm(form)
                    .ifPresent(sheet -> sheet.groups().stream()
                            .filter(group -> form.fields().stream()
                                    .anyMatch(f -> f.equals("*")
                                            || f.equals(group.name())
                                            || group.takes(f.replace("*", "1"))))
                            .forEach(group -> without.remove(group.kind())));
        }
        assertEquals(Set.of(), without, "give them fields in the template of their step");
    }

    /** Whether the whole name comes from a view, which takes it from the record itself. */
    private static boolean isGiven(String field) {
        return field.equals("*") || FRAME.contains(field);
    }

    private boolean isRead(String field, PageForm form, Endpoint endpoint) {
        return sheetForm(form)
                .map(sheet -> sheet.takes(field.replace("*", "1")))
                .orElseGet(() -> endpoint.names().contains(field)
                        || (endpoint.whole()
                                && readings.computeIfAbsent(endpoint.folder(), FieldReading::new)
                                        .reads(field)));
    }

    /** A form of the job sheet says itself which fields it takes. */
    private static Optional<SheetForm> sheetForm(PageForm form) {
        return SheetForms.ALL.stream()
                .filter(sheet -> form.action().equals("/tickets/*/" + sheet.name()))
                .findFirst();
    }

    private static Optional<Endpoint> answering(PageForm form) {
        return ENDPOINTS.stream().filter(e -> e.answers(form)).max(Comparator.comparing(Endpoint::exactness));
    }
}
