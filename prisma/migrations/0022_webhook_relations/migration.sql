-- AddForeignKey
ALTER TABLE "webhook_message" ADD CONSTRAINT "webhook_message_webhook_id_fkey" FOREIGN KEY ("webhook_id") REFERENCES "webhook"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "webhook_attempt" ADD CONSTRAINT "webhook_attempt_webhook_message_id_fkey" FOREIGN KEY ("webhook_message_id") REFERENCES "webhook_message"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
