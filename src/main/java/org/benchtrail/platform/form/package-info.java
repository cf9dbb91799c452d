/**
 * From what was posted to records, and from a refusal back to the page. Nothing else reads the fields of a form or the JSON of an
 * act, and no page catches a refusal by itself.
 *
 * <p>Fields are named after what they become: {@code onset.when} is component {@code when} of the record in group {@code onset},
 * {@code changes.answers.HARDWARE} an entry of its map, {@code loads[2].watts} a component of a row of its list. A form for one record
 * needs no group. So a problem of the record names the field that holds it, and the tags {@code line}, {@code area}, {@code choose},
 * {@code pick} and {@code tick} show it there.
 *
 * <pre>{@code
 * public Response add(MultivaluedMap<String, String> typed) {
 *     PostedForm form = new PostedForm(typed);
 *     return Refusal.answer(
 *             () -> {
 *                 acts.add(form.read(NewLimit.class), current.actor());   // or form.version(), form.optional("onset", OnsetRecorded.class)
 *                 return Html.goTo("/limits");
 *             },
 *             refusal -> Templates.limits(view(), new FormValues().typed(form, refusal)));   // 422 or 409
 * }
 * }</pre>
 *
 * <p>What an edit page shows before anybody types: {@code new FormValues().put("correct", record)}. A form that makes several
 * records reads each by {@link org.benchtrail.platform.form.PostedForm#optional}, adds problems of its own by {@code refuse}, and ends
 * with {@code done()}. A form open to people whose sign-in has ended gives what they typed back by {@link
 * org.benchtrail.platform.form.SignedOut}. A form with files is
 * read by {@code PostedForm.of(MultipartFormDataInput)}. JSON: {@code new PostedJson(mapper, "fact").read(node, Fact.class, "[2]")}.
 */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.form;
